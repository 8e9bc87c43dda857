"""Write crates/moist-air/src/fast/coefficients.rs: polynomials through the relations of the crate.

The relations are typed again here from their sources, so that the fit does not depend on the code that it serves.
Run from the root of the repository: python tests/generate/moist_air_fits.py
"""

import pathlib

import numpy as np
from numpy import exp, log, sqrt, tanh
from numpy.polynomial import Chebyshev, Polynomial

OUT = pathlib.Path("crates/moist-air/src/fast/coefficients.rs")


def water_pa(t):
    """Wagner & Pruss 1993, eq. 1 (IAPWS SR1-86), t in degC."""
    temperature = t + 273.15
    tau = 1 - temperature / 647.096
    a = [-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502]
    n = [1, 1.5, 3, 3.5, 4, 7.5]
    return 22.064e6 * exp(647.096 / temperature * sum(ai * tau**ni for ai, ni in zip(a, n)))


def supercooled_pa(t):
    """Murphy & Koop 2005, eq. 10, t in degC."""
    k = t + 273.15
    return exp(
        54.842763 - 6763.22 / k - 4.210 * log(k) + 0.000367 * k
        + tanh(0.0415 * (k - 218.8)) * (53.878 - 1331.22 / k - 9.44523 * log(k) + 0.014025 * k)
    )


def ice_pa(t):
    """IAPWS R14-08(2011), eq. 6, t in degC."""
    theta = (t + 273.15) / 273.16
    a = [-21.2144006, 27.3203819, -6.10598130]
    b = [0.00333333333, 1.20666667, 1.70333333]
    return 611.657 * exp(sum(ai * theta**bi for ai, bi in zip(a, b)) / theta)


def greenspan_beta(coefficients):
    """exp of a cubic: Greenspan 1976 with the coefficients of Hardy 1998."""
    return lambda t: exp(sum(b * t**i for i, b in enumerate(coefficients)))


def virial_excess(t):
    """Second virial coefficients over ice: Harvey & Huang 2007, Hyland & Wexler 1983, 1/Pa."""
    k = t + 273.15
    h = k / 100
    air_water = 66.5687 * h**-0.237 - 238.834 * h**-1.048 - 176.755 * h**-3.183
    air_air = 34.9568 - 6687.72 / k - 2.10141e6 / k**2 + 92.4746e6 / k**3
    return (19.65e-6 + 1e-6 * (air_air - 2 * air_water)) / (8.314462618 * k)


def cold_share(t):
    """Weight of the virial coefficients over ice from -60 to -100 degC."""
    return (-60 - t) / 40


ALPHA_WATER = Polynomial([3.53624e-4, 2.9328363e-5, 2.6168979e-7, 8.5813609e-9])
ALPHA_SUPERCOOLED = Polynomial([3.62183e-4, 2.6061244e-5, 3.8667770e-7, 3.8268958e-9])
ALPHA_ICE = Polynomial([3.64449e-4, 2.9367585e-5, 4.8874766e-7, 4.3669918e-9])
BETA_WATER = greenspan_beta([-10.7588, 6.3268134e-2, -2.5368934e-4, 6.3405286e-7])
BETA_SUPERCOOLED = greenspan_beta([-10.7604, 6.3987441e-2, -2.6351566e-4, 1.6725084e-6])
BETA_ICE = greenspan_beta([-10.7271, 7.6215115e-2, -1.7490155e-4, 2.4668279e-6])


def air_viscosity(t):
    """Lemmon & Jacobsen 2004, eq. 2 and 3, uPa s."""
    k = t + 273.15
    b = [0.431, -0.4623, 0.08406, 0.005341, -0.00331]
    return 0.0266958 * sqrt(28.9586 * k) / (0.36**2 * exp(sum(bi * log(k / 103.3) ** i for i, bi in enumerate(b))))


def air_conductivity(t):
    """Lemmon & Jacobsen 2004, eq. 5, mW/(m K)."""
    tau = 132.6312 / (t + 273.15)
    return 1.308 * air_viscosity(t) + 1.405 * tau**-1.1 - 1.036 * tau**-0.3


def steam_viscosity(t):
    """IAPWS R12-08, eq. 11, uPa s."""
    r = (t + 273.15) / 647.096
    return 100 * sqrt(r) / sum(h / r**i for i, h in enumerate([1.67752, 2.20462, 0.6366564, -0.241605]))


def steam_conductivity(t):
    """IAPWS R15-11, eq. 16, mW/(m K)."""
    r = (t + 273.15) / 647.096
    c = [2.443221e-3, 1.323095e-2, 6.770357e-3, -3.454586e-3, 4.096266e-4]
    return sqrt(r) / sum(l / r**i for i, l in enumerate(c))


MASS_RATIO = 1 / 0.621945


def weight(ratio, mass_ratio):
    """Wilke 1950, eq. 14."""
    return (1 + sqrt(ratio) / mass_ratio**0.25) ** 2 / sqrt(8 * (1 + mass_ratio))


def vapour_beside_air(t):
    return weight(air_viscosity(t) / steam_viscosity(t), MASS_RATIO)


def air_beside_vapour(t):
    return weight(steam_viscosity(t) / air_viscosity(t), 1 / MASS_RATIO)


def inverse(pressure, low, high):
    """Temperature from ln(e / Pa) less its middle, the half range, and the middle."""
    t = np.linspace(low - 1, high + 1, 400_001)
    logs = log(pressure(t))
    ends = log(pressure(np.array([low, high])))
    middle = round(float(ends.mean()), 1)

    def temperature(u):
        guess = np.interp(u + middle, logs, t)
        for _ in range(3):
            slope = log(pressure(guess + 1e-3) / pressure(guess - 1e-3)) / 2e-3
            guess = guess - (log(pressure(guess)) - u - middle) / slope
        return guess

    return temperature, ends[0] - middle, ends[1] - middle, middle


def fit(function, low, high, degree):
    """Nearly least-maximum polynomial, in powers of the argument itself."""
    series = Chebyshev.interpolate(function, degree, domain=[low, high])
    return series.convert(kind=Polynomial, domain=[-1, 1], window=[-1, 1]).coef


FITS = [
    ("LN_WATER_PA", "Of ln(e / Pa) over water, 0.01 to 100 °C.", lambda t: log(water_pa(t)), 0, 100, 7),
    ("LN_SUPERCOOLED_PA", "Of ln(e / Pa) over supercooled water, -60 to 0.01 °C.", lambda t: log(supercooled_pa(t)), -60, 0.01, 11),
    ("LN_ICE_PA", "Of ln(e / Pa) over ice, -60 to 0 °C.", lambda t: log(ice_pa(t)), -60, 0.01, 6),
    ("WATER_PA", "Of e / Pa over water, 0 to 100 °C, to half a pascal.", water_pa, 0, 100, 6),
    ("SUPERCOOLED_PA", "Of e / Pa over supercooled water, -60 to 0.01 °C, to half a pascal.", supercooled_pa, -60, 0.01, 5),
    ("ICE_PA", "Of e / Pa over ice, -60 to 0.01 °C, to half a pascal.", ice_pa, -60, 0.01, 5),
    ("BETA_WATER", "Of Greenspan's beta / e over water, 1/Pa.", lambda t: BETA_WATER(t) / water_pa(t), 0, 100, 5),
    ("BETA_SUPERCOOLED", "Of Greenspan's beta / e over supercooled water, 1/Pa.", lambda t: BETA_SUPERCOOLED(t) / supercooled_pa(t), -60, 0.01, 6),
    ("BETA_ICE", "Of Greenspan's beta / e over ice, 1/Pa.", lambda t: BETA_ICE(t) / ice_pa(t), -60, 0.01, 5),
    ("AIR_VISCOSITY", "Of the viscosity of dry air, Pa s.", lambda t: 1e-6 * air_viscosity(t), -60, 100, 4),
    ("STEAM_VISCOSITY", "Of the viscosity of vapour, Pa s.", lambda t: 1e-6 * steam_viscosity(t), -60, 100, 6),
    ("AIR_CONDUCTIVITY", "Of the conductivity of dry air, W/(m K).", lambda t: 1e-3 * air_conductivity(t), -60, 100, 4),
    ("STEAM_CONDUCTIVITY", "Of the conductivity of vapour, W/(m K).", lambda t: 1e-3 * steam_conductivity(t), -60, 100, 5),
    ("VAPOUR_BESIDE_AIR", "Of Wilke's weight of vapour beside air.", vapour_beside_air, -60, 100, 6),
    ("AIR_BESIDE_VAPOUR", "Of Wilke's weight of air beside vapour.", air_beside_vapour, -60, 100, 6),
    ("DIFFUSIVITY", "Of the diffusivity of vapour times the pressure, Pa m2/s.", lambda t: 2.178e-5 * 101325 * ((t + 273.15) / 273.15) ** 1.81, -60, 100, 5),
]


def constant(name, doc, coefficients):
    """Lines of one array in Rust."""
    lines = [f"/// {doc}", "#[rustfmt::skip]", f"pub(crate) const {name}: [f64; {len(coefficients)}] = ["]
    return lines + [f"    {c!r}," for c in map(float, coefficients)] + ["];", ""]


def ice_alpha(t):
    """Greenspan's alpha over ice times its share below -60 degC."""
    return np.where(t < -60, 1 - cold_share(t), 1) * ALPHA_ICE(t)


def ice_beta(t):
    """Greenspan's beta / e over ice times its share below -60 degC, and of the virial part, 1/Pa."""
    share = np.where(t < -60, cold_share(t), 0)
    return (1 - share) * BETA_ICE(t) / ice_pa(t) + share * virial_excess(t)


# Pieces of the inverse: in powers of ln(e / Pa) less its middle. Their degrees differ, so that the compiler keeps them apart and does not select among coefficients.
PIECES = [
    ("WATER", "over water, 0 to 100 °C", water_pa, ALPHA_WATER, lambda t: BETA_WATER(t) / water_pa(t), 0, 100, 8),
    ("SUPERCOOLED", "over supercooled water, -50 to 0.01 °C", supercooled_pa, ALPHA_SUPERCOOLED, lambda t: BETA_SUPERCOOLED(t) / supercooled_pa(t), -50, 0.01, 9),
    ("SUPERCOOLED_COLD", "over supercooled water, -100 to -50 °C", supercooled_pa, ALPHA_SUPERCOOLED, lambda t: BETA_SUPERCOOLED(t) / supercooled_pa(t), -100, -50, 10),
    ("ICE", "over ice, -60 to 0.01 °C", ice_pa, ice_alpha, ice_beta, -60, 0.01, 7),
    ("ICE_COLD", "over ice, -100 to -60 °C", ice_pa, ice_alpha, ice_beta, -100, -60, 6),
]
EXCESS_DEGREE = 6


def main():
    lines = [
        "//! Coefficients of the fits, written by `tests/generate/moist_air_fits.py`; powers of the temperature in °C.",
        "",
        "use super::dew_point::Piece;",
        "",
    ]
    for name, doc, function, low, high, degree in FITS:
        coefficients = fit(function, low, high, degree)
        t = np.linspace(low, high, 100_001)
        error = np.abs(np.polynomial.polynomial.polyval(t, coefficients) - function(t))
        kind = "absolute" if name.endswith("_PA") else "relative"
        if kind == "relative":
            error = error / np.abs(function(t)).clip(1e-9)
        print(f"{name}: degree {degree}, largest {kind} error {error.max():.1e}")
        lines += constant(name, doc, coefficients)
    for name, place, pressure, alpha, beta, low, high, degree in PIECES:
        temperature, bottom, top, middle = inverse(pressure, low, high)
        coefficients = fit(temperature, bottom, top, degree)
        alphas, betas = (fit(lambda u: part(temperature(u)), bottom, top, EXCESS_DEGREE) for part in (alpha, beta))
        u = np.linspace(bottom, top, 100_001)
        t = temperature(u)
        error = np.abs(np.polynomial.polynomial.polyval(u, coefficients) - t)
        of_excess = (np.polynomial.polynomial.polyval(u, alphas) - alpha(t)) / 1e5
        of_excess = np.abs(of_excess + np.polynomial.polynomial.polyval(u, betas) - beta(t)) * np.abs(1e5 - pressure(t))
        print(f"{name}: degree {degree}, largest error {error.max():.1e} K, of ln f at 100 kPa {of_excess.max():.1e}")
        lines += [
            f"/// The inverse {place}, in powers of ln(e / Pa) less its middle.",
            "#[rustfmt::skip]",
            f"pub(super) const {name}: Piece<{degree + 1}> = Piece {{",
            f"    middle: {middle!r},",
        ]
        for field, values in (("temperature_c", coefficients), ("alpha", alphas), ("beta", betas)):
            lines += [f"    {field}: ["] + [f"        {c!r}," for c in map(float, values)] + ["    ],"]
        lines += ["};", ""]
    OUT.write_text("\n".join(lines[:-1]) + "\n")


main()
