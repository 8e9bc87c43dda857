"""Moist air at one pressure: states from CoolProp (real gas), transport from the published equations.

Saturation: CoolProp HAPropsSI, over ice below 0.01 degC.  Heat of vaporisation: CoolProp (IAPWS-95).
Heat of sublimation: Murphy & Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, eq. 5.
Dry air: Lemmon & Jacobsen, Int. J. Thermophys. 25 (2004) 21, dilute gas.
Steam: IAPWS R12-08 and R15-11, dilute gas.
Mixing: Wilke, J. Chem. Phys. 18 (1950) 517; Mason & Saxena, Phys. Fluids 1 (1958) 361, factor 1.065.
Diffusivity: Massman, Atmos. Environ. 32 (1998) 1111.
"""
import math
from functools import lru_cache

import numpy as np
from CoolProp.CoolProp import HAPropsSI, PropsSI
from scipy.interpolate import CubicSpline

R = 8.314462618
M_AIR = 0.0289654
M_WATER = 0.018015268
R_AIR = R / M_AIR
RATIO = M_WATER / M_AIR
CP_AIR = 1006.0
CP_VAPOUR = 1875.0
HV0 = 2500.9e3
SEAM_C = 0.0


class Table:
    """A cubic spline over an even grid, evaluated without numpy's overhead."""

    def __init__(self, low, high, steps, function):
        grid = np.linspace(low, high, steps + 1)
        spline = CubicSpline(grid, [function(x) for x in grid])
        self.low, self.high, self.width = low, high, (high - low) / steps
        self.rows = [tuple(map(float, spline.c[:, i])) for i in range(steps)]

    def __call__(self, x):
        i = min(max(int((x - self.low) / self.width), 0), len(self.rows) - 1)
        d = x - (self.low + i * self.width)
        a, b, c, e = self.rows[i]
        return ((a * d + b) * d + c) * d + e


def humid(output, t_c, p, **given):
    (name, value), = given.items()
    return HAPropsSI(output, "T", t_c + 273.15, "P", p, name, value)


@lru_cache(maxsize=None)
def saturation_tables(p):
    """ln of the humidity ratio at saturation, over ice and over water."""
    boiling = PropsSI("T", "P", p, "Q", 0, "Water") - 273.15
    top = min(90.0, boiling - 6.0)
    ice = Table(-60.0, 0.009, 240, lambda t: math.log(humid("W", t, p, R=1.0)))
    water = Table(0.011, top, 320, lambda t: math.log(humid("W", t, p, R=1.0)))
    return ice, water, top


@lru_cache(maxsize=None)
def vaporisation_table():
    def heat(t):
        return PropsSI("H", "T", t + 273.15, "Q", 1, "Water") - PropsSI("H", "T", t + 273.15, "Q", 0, "Water")

    return Table(0.01, 95.0, 95, heat)


def vaporisation(t_c):
    return vaporisation_table()(t_c)


def sublimation(t_c):
    t = t_c + 273.15
    return (46782.5 + 35.8925 * t - 0.07414 * t * t + 541.5 * math.exp(-((t / 123.75) ** 2))) / M_WATER


def latent(t_c):
    return sublimation(t_c) if t_c < SEAM_C else vaporisation(t_c)


def h_vapour(t_c):
    return HV0 + CP_VAPOUR * t_c


def h_condensed(t_c):
    return h_vapour(t_c) - latent(t_c)


# Lemmon & Jacobsen 2004, tables I to III.
COLLISION = (0.431, -0.4623, 0.08406, 0.005341, -0.00331)
EPSILON_K, SIGMA_NM, M_AIR_G = 103.3, 0.360, 28.9586


def air_viscosity(t):
    ln = math.log(t / EPSILON_K)
    omega = math.exp(sum(b * ln**i for i, b in enumerate(COLLISION)))
    return 0.0266958 * math.sqrt(M_AIR_G * t) / (SIGMA_NM**2 * omega) * 1e-6


def air_conductivity(t):
    tau = 132.6312 / t
    return 1e-3 * (1.308 * air_viscosity(t) * 1e6 + 1.405 * tau**-1.1 - 1.036 * tau**-0.3)


def steam_viscosity(t):
    r = t / 647.096
    series = sum(h / r**i for i, h in enumerate((1.67752, 2.20462, 0.6366564, -0.241605)))
    return 100.0 * math.sqrt(r) / series * 1e-6


def steam_conductivity(t):
    r = t / 647.096
    series = sum(
        h / r**i for i, h in enumerate((2.443221e-3, 1.323095e-2, 6.770357e-3, -3.454586e-3, 4.096266e-4))
    )
    return math.sqrt(r) / series * 1e-3


def wilke(mu_i, mu_j, m_i, m_j):
    return (1 + math.sqrt(mu_i / mu_j) * (m_j / m_i) ** 0.25) ** 2 / math.sqrt(8 * (1 + m_i / m_j))


def transport(t_c, w):
    """Viscosity and conductivity of moist air."""
    t = t_c + 273.15
    x_w = w / (RATIO + w)
    x_a = 1 - x_w
    mu_a, mu_w = air_viscosity(t), steam_viscosity(t)
    aw, wa = wilke(mu_a, mu_w, M_AIR, M_WATER), wilke(mu_w, mu_a, M_WATER, M_AIR)
    mu = x_a * mu_a / (x_a + x_w * aw) + x_w * mu_w / (x_w + x_a * wa)
    k_a, k_w = air_conductivity(t), steam_conductivity(t)
    k = x_a * k_a / (x_a + 1.065 * x_w * aw) + x_w * k_w / (x_w + 1.065 * x_a * wa)
    return mu, k


class MoistAir:
    """Moist air at one pressure."""

    def __init__(self, p_pa):
        self.p = p_pa
        self.ice, self.water, self.top = saturation_tables(p_pa)

    def w_sat(self, t_c):
        """Humidity ratio at saturation, over ice below 0 degC; flat above the table, where no wall is wet."""
        return math.exp(self.ice(t_c) if t_c < SEAM_C else self.water(min(t_c, self.top)))

    def density_real(self, t_c, w):
        return 1 / HAPropsSI("Vha", "T", t_c + 273.15, "P", self.p, "W", w)

    def density(self, t_c, w):
        return self.p * (1 + w) / (R_AIR * (t_c + 273.15) * (1 + w / RATIO))

    def diffusivity(self, t_c):
        return 2.178e-5 * ((t_c + 273.15) / 273.15) ** 1.81 * 101325.0 / self.p

    def enthalpy(self, t_c, w_total):
        """Of air, vapour and mist per kg of dry air; the mist is what exceeds saturation."""
        w = min(w_total, self.w_sat(t_c))
        return CP_AIR * t_c + w * h_vapour(t_c) + (w_total - w) * h_condensed(t_c)

    def state(self, h, w_total):
        """Temperature, vapour and mist of a given enthalpy and water content."""
        t = (h - w_total * HV0) / (CP_AIR + CP_VAPOUR * w_total)
        if -60.0 < t and w_total <= self.w_sat(t):
            return t, w_total, 0.0
        # The enthalpy jumps upwards at 0 degC where mist melts: bisection ends on the jump.
        low, high = max(t, -60.0), self.top
        for _ in range(60):
            mid = 0.5 * (low + high)
            if self.enthalpy(mid, w_total) < h:
                low = mid
            else:
                high = mid
        t = 0.5 * (low + high)
        w = min(w_total, self.w_sat(t))
        return t, w, w_total - w
