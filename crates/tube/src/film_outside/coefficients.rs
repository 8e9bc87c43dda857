//! Coefficients of the fits, written by `tests/generate/outside_film_fits.py`; powers of the film temperature in °C, -80 to 160 °C.

/// Of the conductivity of dry air, W/(m K); largest relative error 4.2e-06.
#[rustfmt::skip]
pub(crate) const CONDUCTIVITY: [f64; 5] = [
    0.024325532161668585,
    7.667399884577976e-05,
    -4.486366752869283e-08,
    5.632301124206194e-11,
    -5.5546291286694835e-14,
];

/// Of the factor on `(p^2 D^3 dT)^(1/6)` for a horizontal cylinder; largest relative error 9.4e-05.
#[rustfmt::skip]
pub(crate) const HORIZONTAL: [f64; 6] = [
    0.15782105924049777,
    -0.0004506931832509944,
    1.529426941076336e-06,
    -5.711016953760489e-09,
    2.0479599102072518e-11,
    -4.051251146381112e-14,
];

/// Of the factor on `(p^2 L^3 dT)^(1/6)` for a vertical plate; largest relative error 9.4e-05.
#[rustfmt::skip]
pub(crate) const VERTICAL: [f64; 6] = [
    0.15936398267576427,
    -0.00045498690794802123,
    1.5438707207004514e-06,
    -5.7644689574631115e-09,
    2.066976117104056e-11,
    -4.0887011471294394e-14,
];

/// Of `Gr^-0.22725` for 1 Pa, 1 m, 1 K; largest relative error 1.2e-06.
#[rustfmt::skip]
pub(crate) const SLENDER: [f64; 6] = [
    2.4401383743317995,
    0.009321683224695121,
    -4.5987172305389036e-07,
    -6.929112355143304e-10,
    3.623065338582604e-12,
    -6.880994542790061e-15,
];

/// Of the kinematic viscosity times the pressure, Pa m2/s; largest relative error 2.2e-05.
#[rustfmt::skip]
pub(crate) const KINEMATIC: [f64; 5] = [
    1.3488144439110807,
    0.008867962498132712,
    1.1471675220857433e-05,
    -7.028571555846828e-09,
    7.066237366700043e-12,
];

/// Of the Prandtl number; largest relative error 1.8e-05.
#[rustfmt::skip]
pub(crate) const PRANDTL: [f64; 5] = [
    0.7114437065541486,
    -0.00016955330617890633,
    3.096192392219192e-07,
    -9.921754727144884e-10,
    2.0892329277582556e-12,
];

/// Of `(Pr/Sc)^(2/3) / cp`, kg K/J; largest relative error 5.1e-05.
#[rustfmt::skip]
pub(crate) const LEWIS: [f64; 5] = [
    0.0010999159534867005,
    -1.3659968597743773e-07,
    1.0678794117711638e-09,
    -4.309488259455034e-12,
    9.259965301079805e-15,
];
