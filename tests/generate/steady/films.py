"""The film inside a tube and the film outside it.

Inside: VDI Heat Atlas, 2nd ed. (2010), ch. G1, local laminar Nusselt number at uniform wall temperature;
Gnielinski, Int. Chem. Eng. 16 (1976) 359; transition: Gnielinski, Int. J. Heat Mass Transf. 63 (2013) 134.
Outside: Churchill & Chu, Int. J. Heat Mass Transf. 18 (1975) 1049 (cylinder) and 1323 (plate);
Popiel, Heat Transf. Eng. 29 (2008) 521; Churchill & Bernstein, J. Heat Transf. 99 (1977) 300.
"""
import math

from .moist_air import CP_AIR, CP_VAPOUR, R_AIR, air_conductivity, air_viscosity, transport

G = 9.80665
SIGMA = 5.670374419e-8


def laminar(re, pr, d_x):
    gz = re * pr * d_x
    return (3.66**3 + 0.7**3 + (1.077 * gz ** (1 / 3) - 0.7) ** 3) ** (1 / 3)


def turbulent(re, pr, d_x):
    f8 = (1.8 * math.log10(re) - 1.5) ** -2 / 8
    developed = f8 * (re - 1000) * pr / (1 + 12.7 * math.sqrt(f8) * (pr ** (2 / 3) - 1))
    return developed * (1 + d_x ** (2 / 3) / 3)


def inside_number(re, pr, d_x):
    """Nusselt number of Pr, or Sherwood number of Sc, at distance x = d / d_x."""
    if re <= 2300:
        return laminar(re, pr, d_x)
    if re >= 4000:
        return turbulent(re, pr, d_x)
    share = (re - 2300) / 1700
    return (1 - share) * laminar(2300, pr, d_x) + share * turbulent(4000, pr, d_x)


def inside_film(air, t, w, m_dry, d, x):
    """Heat-transfer coefficient and rho times the mass-transfer coefficient."""
    w = min(w, air.w_sat(t))
    mu, k = transport(t, w)
    cp = (CP_AIR + CP_VAPOUR * w) / (1 + w)
    rho, diff = air.density(t, w), air.diffusivity(t)
    re = 4 * m_dry * (1 + w) / (math.pi * d * mu)
    h = inside_number(re, mu * cp / k, d / x) * k / d
    return h, rho * inside_number(re, mu / (rho * diff), d / x) * diff / d


def natural_cylinder(ra, pr):
    return (0.60 + 0.387 * (ra / (1 + (0.559 / pr) ** (9 / 16)) ** (16 / 9)) ** (1 / 6)) ** 2


def natural_plate(ra, pr):
    return (0.825 + 0.387 * ra ** (1 / 6) / (1 + (0.492 / pr) ** (9 / 16)) ** (8 / 27)) ** 2


def forced_cylinder(re, pr):
    stretched = (1 + (re / 282000) ** (5 / 8)) ** (4 / 5)
    return 0.3 + 0.62 * math.sqrt(re) * pr ** (1 / 3) / (1 + (0.4 / pr) ** (2 / 3)) ** 0.25 * stretched


def outside_film(air, t_s, t_a, d, wind, riser_m):
    """Convective coefficient and rho times the mass-transfer coefficient; riser_m None for flat legs."""
    t_f = 0.5 * (t_s + t_a)
    tk = t_f + 273.15
    mu, k, rho = air_viscosity(tk), air_conductivity(tk), air.p / (R_AIR * tk)
    nu_v, pr = mu / rho, mu * CP_AIR / k
    # Equal temperatures: no buoyancy, and the slender factor has no limit there; 1 uK is nothing to the heat.
    buoyancy = G / tk * max(abs(t_s - t_a), 1e-6) / nu_v**2
    if riser_m is None:
        nu = natural_cylinder(buoyancy * d**3 * pr, pr)
    else:
        gr = buoyancy * riser_m**3
        slender = 1 + 0.300 * (math.sqrt(32) * gr**-0.25 * riser_m / d) ** 0.909
        nu = natural_plate(gr * pr, pr) * slender * d / riser_m
    if wind > 0:
        nu = (nu**3 + forced_cylinder(wind * d / nu_v, pr) ** 3) ** (1 / 3)
    h = nu * k / d
    sc = nu_v / air.diffusivity(t_f)
    return h, h / CP_AIR * (pr / sc) ** (2 / 3)
