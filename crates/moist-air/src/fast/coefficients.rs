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
pub(crate) const LN_SUPERCOOLED_PA: [f64; 11] = [
    6.415445042318492,
    0.07267574904181134,
    -0.00029933665286074006,
    1.1430120667423613e-06,
    -3.088947487795833e-09,
    2.3694714129054278e-11,
    -5.485847571284568e-12,
    -2.914776147747072e-13,
    -8.464070572955668e-15,
    -1.1346382948775297e-16,
    -5.478519135704582e-19,
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
pub(crate) const BETA_WATER: [f64; 5] = [
    3.4765709303095743e-08,
    -3.1960281223719746e-10,
    2.490528896613559e-12,
    -1.6112215134105122e-14,
    5.894579392531364e-17,
];

/// Of Greenspan's beta / e over supercooled water, 1/Pa.
#[rustfmt::skip]
pub(crate) const BETA_SUPERCOOLED: [f64; 5] = [
    3.4739453139547374e-08,
    -2.884793695087471e-10,
    4.288468257249949e-12,
    8.059412341917623e-14,
    1.2365732237886292e-15,
];

/// Of Greenspan's beta / e over ice, 1/Pa.
#[rustfmt::skip]
pub(crate) const BETA_ICE: [f64; 5] = [
    3.590484517076618e-08,
    -2.1897842704490805e-10,
    5.498206228598463e-12,
    2.3536807956803902e-14,
    1.3693425105996172e-16,
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
