//! Coefficients of the fits, written by `tests/generate/moist_air_fits.py`; powers of the temperature in °C.

/// Of ln(e / Pa) over water, 0.01 to 100 °C.
#[rustfmt::skip]
pub(crate) const LN_WATER_PA: [f64; 8] = [
    6.415445314421156,
    0.07265557962901867,
    -0.0002985921843406688,
    1.1303875431376084e-06,
    -4.011958034413965e-09,
    1.3317024581044737e-11,
    -3.574101410367803e-14,
    5.303446247125977e-17,
];

/// Of ln(e / Pa) over supercooled water, -60 to 0.01 °C.
#[rustfmt::skip]
pub(crate) const LN_SUPERCOOLED_PA: [f64; 12] = [
    6.415444930100657,
    0.07267522059816142,
    -0.0002997286231553807,
    1.0319722694358706e-06,
    -1.8985647588853505e-08,
    -1.2891457069434183e-09,
    -7.24838204373302e-11,
    -2.471742875353588e-12,
    -5.3779536717806147e-14,
    -6.955256458257378e-16,
    -4.756191793139128e-18,
    -1.3095481268242946e-20,
];

/// Of ln(e / Pa) over ice, -60 to 0 °C.
#[rustfmt::skip]
pub(crate) const LN_ICE_PA: [f64; 7] = [
    6.41534796717259,
    0.0823581594469378,
    -0.0003044679563923337,
    1.0805493093064255e-06,
    -4.210920620118439e-09,
    7.720092985406216e-12,
    -1.198184434491426e-13,
];

/// Of Greenspan's beta / e over water, 1/Pa.
#[rustfmt::skip]
pub(crate) const BETA_WATER: [f64; 6] = [
    3.477698243701456e-08,
    -3.2484880913535963e-10,
    2.8918214106986713e-12,
    -2.7003729610371027e-14,
    1.8058450730382952e-16,
    -4.779801992770582e-19,
];

/// Of Greenspan's beta / e over supercooled water, 1/Pa.
#[rustfmt::skip]
pub(crate) const BETA_SUPERCOOLED: [f64; 7] = [
    3.4722200675471654e-08,
    -3.040503816548478e-10,
    1.9492161481842915e-12,
    -5.184555020533949e-14,
    -2.2451252128285995e-15,
    -4.3165532630443824e-17,
    -2.046091332277926e-19,
];

/// Of Greenspan's beta / e over ice, 1/Pa.
#[rustfmt::skip]
pub(crate) const BETA_ICE: [f64; 6] = [
    3.590194375610262e-08,
    -2.2170045310980522e-10,
    5.108040440253548e-12,
    4.402347268498153e-15,
    -2.409850778723893e-16,
    -2.590072533550553e-18,
];

/// Of Greenspan's beta / e over supercooled water, -100 to -50 °C, 1/Pa.
#[rustfmt::skip]
pub(crate) const BETA_SUPERCOOLED_COLD: [f64; 8] = [
    -1.866330446391583e-07,
    -2.2692498350622184e-08,
    -9.583026064950744e-10,
    -2.275997669372969e-11,
    -3.2398427318915204e-13,
    -2.8040403646880146e-15,
    -1.3709411393334533e-17,
    -2.9635538807137876e-20,
];

/// Of Greenspan's alpha over ice times its share, -100 to -60 °C.
#[rustfmt::skip]
pub(crate) const ALPHA_ICE_COLD: [f64; 5] = [
    0.0009111225000003572,
    8.253018750001773e-05,
    1.9560587750003264e-06,
    2.3136171000002635e-08,
    1.0917479500000793e-10,
];

/// Of Greenspan's beta / e over ice times its share, and of the virial part, -100 to -60 °C, 1/Pa.
#[rustfmt::skip]
pub(crate) const BETA_ICE_COLD: [f64; 7] = [
    -9.470448748719358e-08,
    -1.0944370741855904e-08,
    -3.6886286459391853e-10,
    -7.036952564153011e-12,
    -7.573514864787053e-14,
    -4.39821006350587e-16,
    -1.0497390332773476e-18,
];

/// Of the viscosity of dry air, Pa s.
#[rustfmt::skip]
pub(crate) const AIR_VISCOSITY: [f64; 5] = [
    1.7203256163927782e-05,
    5.012286159024092e-08,
    -3.740053059260427e-11,
    4.8074544607774804e-14,
    -5.527432541399509e-17,
];

/// Of the viscosity of vapour, Pa s.
#[rustfmt::skip]
pub(crate) const STEAM_VISCOSITY: [f64; 7] = [
    8.947956309638492e-06,
    2.870699178394012e-08,
    7.866010133763126e-11,
    -4.4444150203559196e-13,
    3.457492380834243e-15,
    -2.63793966164053e-17,
    9.438980238968622e-20,
];

/// Of the conductivity of dry air, W/(m K).
#[rustfmt::skip]
pub(crate) const AIR_CONDUCTIVITY: [f64; 5] = [
    0.024325463148468868,
    7.667322978657905e-05,
    -4.480542821351715e-08,
    5.646540495145384e-11,
    -6.104706811020354e-14,
];

/// Of the conductivity of vapour, W/(m K).
#[rustfmt::skip]
pub(crate) const STEAM_CONDUCTIVITY: [f64; 6] = [
    0.01676392915117853,
    6.416341971099547e-05,
    1.0755956130695107e-07,
    -6.652286453063797e-11,
    -7.492800231626735e-13,
    4.159875868673081e-15,
];

/// Of Wilke's weight of vapour beside air.
#[rustfmt::skip]
pub(crate) const VAPOUR_BESIDE_AIR: [f64; 7] = [
    1.090058515874755,
    -0.0001772545783388422,
    -6.051667337551188e-06,
    5.243188041947248e-08,
    -3.524729378963576e-10,
    2.0238848764724514e-12,
    -6.148265647369987e-15,
];

/// Of Wilke's weight of air beside vapour.
#[rustfmt::skip]
pub(crate) const AIR_BESIDE_VAPOUR: [f64; 7] = [
    0.9116174918098199,
    0.00012047529207892848,
    4.0964878363500796e-06,
    -3.354039297603499e-08,
    2.7883377776442295e-10,
    -2.0811623034107905e-12,
    7.335129460903907e-15,
];

/// Of the diffusivity of vapour times the pressure, Pa m2/s.
#[rustfmt::skip]
pub(crate) const DIFFUSIVITY: [f64; 6] = [
    2.206858506207915,
    0.01462352655878218,
    2.1682264148229152e-05,
    -5.035632093857601e-09,
    5.543282271787757e-12,
    -7.266922338762066e-15,
];

/// Temperature in °C over water, 0 to 100 °C, in powers of ln(e / Pa) less [`WATER_C_MIDDLE`].
#[rustfmt::skip]
pub(crate) const WATER_C: [f64; 9] = [
    41.751239942551216,
    18.995921028853143,
    1.3076044177193766,
    0.09588505014899551,
    0.007047932274720638,
    0.0004981362060887214,
    3.269735003353883e-05,
    1.9011953265447499e-06,
    7.979329852895919e-08,
];

/// Middle of [`WATER_C`].
pub(crate) const WATER_C_MIDDLE: f64 = 9.0;

/// Temperature in °C over supercooled water, -50 to 0.01 °C, in powers of ln(e / Pa) less [`SUPERCOOLED_C_MIDDLE`].
#[rustfmt::skip]
pub(crate) const SUPERCOOLED_C: [f64; 10] = [
    -28.189557299950362,
    10.775525134080397,
    0.5380338968648873,
    0.022999961915630588,
    0.002011816241609863,
    0.0002707106882304012,
    -4.786900445255334e-05,
    -8.928377149092744e-07,
    1.8363711688960257e-06,
    -1.6363075877971862e-07,
];

/// Middle of [`SUPERCOOLED_C`].
pub(crate) const SUPERCOOLED_C_MIDDLE: f64 = 4.1;

/// Temperature in °C over supercooled water, -100 to -50 °C, in powers of ln(e / Pa) less [`SUPERCOOLED_COLD_C_MIDDLE`].
#[rustfmt::skip]
pub(crate) const SUPERCOOLED_COLD_C: [f64; 11] = [
    -78.44391742905304,
    6.396409374198588,
    0.21397308153798708,
    0.00866580610445371,
    0.0006467756395907132,
    7.837122953234905e-05,
    7.094923670246133e-06,
    -5.725025381528578e-07,
    -2.6767118633995517e-07,
    -1.3246346717197862e-08,
    1.9951134188680216e-09,
];

/// Middle of [`SUPERCOOLED_COLD_C`].
pub(crate) const SUPERCOOLED_COLD_C_MIDDLE: f64 = -2.0;

/// Temperature in °C over ice, -60 to 0.01 °C, in powers of ln(e / Pa) less [`ICE_C_MIDDLE`].
#[rustfmt::skip]
pub(crate) const ICE_C: [f64; 9] = [
    -34.13541376760703,
    9.287002882273658,
    0.3605074593129849,
    0.01429373712940543,
    0.000583747786686349,
    2.458312217321882e-05,
    1.066494831587777e-06,
    4.998913674863082e-08,
    2.330194046372487e-09,
];

/// Middle of [`ICE_C`].
pub(crate) const ICE_C_MIDDLE: f64 = 3.2;

/// Temperature in °C over ice, -100 to -60 °C, in powers of ln(e / Pa) less [`ICE_COLD_C_MIDDLE`].
#[rustfmt::skip]
pub(crate) const ICE_COLD_C: [f64; 9] = [
    -81.78047463982764,
    5.971554362021747,
    0.1842009314094403,
    0.005722843537637381,
    0.00018058349637596448,
    5.8071875076140055e-06,
    1.9065587869258977e-07,
    6.570385207215753e-09,
    2.2098836158570856e-10,
];

/// Middle of [`ICE_COLD_C`].
pub(crate) const ICE_COLD_C_MIDDLE: f64 = -3.2;
