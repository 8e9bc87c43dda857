"""Writes the polynomials of crates/tube/src/film_outside/coefficients.rs: combinations of dry-air properties that the outside film needs.

Dry air by Lemmon & Jacobsen 2004 at low density (the same relations as crates/moist-air/src/transport.rs), cp 1006 J/kgK, ideal gas.
Needs numpy only; run: python outside_film_fits.py > ../../crates/tube/src/film_outside/coefficients.rs
"""
import numpy as np
from numpy.polynomial import chebyshev as C, polynomial as P

R = 8.314462618 / (18.015268e-3 / 0.621945)
CP, G = 1006.0, 9.80665
LOW, HIGH = -80.0, 160.0


def mu(tk):
    x = np.log(tk / 103.3)
    om = np.exp(0.431 - 0.4623 * x + 0.08406 * x**2 + 0.005341 * x**3 - 0.00331 * x**4)
    return 1e-6 * 0.0266958 * np.sqrt(28.9586 * tk) / (0.36**2 * om)


def k(tk):
    tau = 132.6312 / tk
    return 1e-3 * (1.308 * mu(tk) * 1e6 + 1.405 * tau**-1.1 - 1.036 * tau**-0.3)


def prandtl(tk):
    return mu(tk) * CP / k(tk)


def rayleigh_unit(tk):
    "Rayleigh number for 1 Pa, 1 m, 1 K."
    return G * CP / (R**2 * tk**3 * mu(tk) * k(tk))


def massman_lewis(tk):
    "(Pr/Sc)^(2/3) / cp: turns a coefficient of heat into one of vapour."
    d = 2.178e-5 * (tk / 273.15) ** 1.81 * 101325.0
    sc = mu(tk) * R * tk / d
    return (prandtl(tk) / sc) ** (2 / 3) / CP


FITS = [
    ("CONDUCTIVITY", "Of the conductivity of dry air, W/(m K)", k, 5),
    ("HORIZONTAL", "Of the factor on `(p^2 D^3 dT)^(1/6)` for a horizontal cylinder",
     lambda t: 0.387 * rayleigh_unit(t) ** (1 / 6) / (1 + (0.559 / prandtl(t)) ** (9 / 16)) ** (8 / 27), 6),
    ("VERTICAL", "Of the factor on `(p^2 L^3 dT)^(1/6)` for a vertical plate",
     lambda t: 0.387 * rayleigh_unit(t) ** (1 / 6) / (1 + (0.492 / prandtl(t)) ** (9 / 16)) ** (8 / 27), 6),
    ("SLENDER", "Of `Gr^-0.22725` for 1 Pa, 1 m, 1 K",
     lambda t: (rayleigh_unit(t) / prandtl(t)) ** (-0.25 * 0.909), 6),
    ("KINEMATIC", "Of the kinematic viscosity times the pressure, Pa m2/s", lambda t: mu(t) * R * t, 5),
    ("PRANDTL", "Of the Prandtl number", prandtl, 5),
    ("LEWIS", "Of `(Pr/Sc)^(2/3) / cp`, kg K/J", massman_lewis, 5),
]

print("//! Coefficients of the fits, written by `tests/generate/outside_film_fits.py`; powers of the film temperature in °C, -80 to 160 °C.\n")
for name, text, f, n in FITS:
    t = 0.5 * (LOW + HIGH) + 0.5 * (HIGH - LOW) * np.cos(np.pi * (np.arange(200) + 0.5) / 200)
    y = f(t + 273.15)
    c = C.Chebyshev.fit(t, y, n - 1, domain=[LOW, HIGH])
    p = c.convert(kind=np.polynomial.Polynomial).coef
    err = np.max(np.abs(P.polyval(t, p) / y - 1))
    print(f"/// {text}; largest relative error {err:.1e}.")
    print("#[rustfmt::skip]")
    print(f"pub(crate) const {name}: [f64; {n}] = [")
    for v in p:
        print(f"    {float(v)!r},")
    print("];\n")
