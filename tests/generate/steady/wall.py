"""The wall's balance at one place: inside film, wall, tracing, insulation, outside film, dew inside and outside."""
import math
from dataclasses import dataclass

from scipy.optimize import brentq

from .films import SIGMA, inside_film, outside_film
from .moist_air import h_condensed, h_vapour, latent, sublimation, vaporisation


def driving(w_from, w_to):
    """ln((1 - y_to)/(1 - y_from)) of mass fractions y = W/(1 + W)."""
    return math.log((1 + w_from) / (1 + w_to))


@dataclass
class Wall:
    t_inner: float
    t_surface: float
    sensible: float  # W/m from the air to the wall, without the vapour's own
    flux: float  # kg/(m s) of vapour deposited inside
    sweat: float  # kg/(m s) deposited outside


class Place:
    """Everything of the wall's balance that does not change while it is solved."""

    def __init__(self, air, segment, t, w, m_dry, x):
        self.air, self.s, self.t, self.w = air, segment, t, w
        self.d = segment["d_in"]
        self.h, self.rho_hm = inside_film(air, t, w, m_dry, self.d, x)
        self.d_tube = segment["d_out"]
        self.d_surface = self.d_tube + 2 * segment["ins"]
        self.r_wall = math.log(self.d_tube / self.d) / (2 * math.pi * segment["k_wall"])
        self.r_ins = math.log(self.d_surface / self.d_tube) / (2 * math.pi * segment["k_ins"])
        self.riser = segment["length"] if segment["vertical"] else None

    def flux(self, t_w):
        w_wall = self.air.w_sat(t_w)
        if w_wall >= self.w:
            return 0.0
        return math.pi * self.d * self.rho_hm * driving(self.w, w_wall)

    def heat_in(self, t_w):
        t_f = 0.5 * (self.t + t_w)
        return self.sensible(t_w) + self.flux(t_w) * (h_vapour(t_f) - h_condensed(t_w))

    def sensible(self, t_w):
        return math.pi * self.d * self.h * (self.t - t_w)

    def outside(self, t_s):
        """Heat to the space without that of sweat, and sweat."""
        s = self.s
        h, rho_hm = outside_film(self.air, t_s, s["t_amb"], self.d_surface, s["wind"], self.riser)
        a, b = t_s + 273.15, s["t_amb"] + 273.15
        radiant = s["emis"] * SIGMA * (a * a + b * b) * (a + b)
        w_surface = self.air.w_sat(t_s)
        sweat = 0.0
        if w_surface < s["w_amb"]:
            sweat = math.pi * self.d_surface * rho_hm * driving(s["w_amb"], w_surface)
        return math.pi * self.d_surface * (h + radiant) * (t_s - s["t_amb"]), sweat

    def inner(self, t_s, q_out):
        """Inner wall temperature and heat through the wall for a surface temperature and the heat that leaves it."""
        through = q_out - self.s["trace"]
        return t_s + q_out * self.r_ins + through * self.r_wall, through

    def solve(self):
        def residual(t_s):
            q, sweat = self.outside(t_s)
            t_w, through = self.inner(t_s, q - sweat * latent(t_s))
            return through - self.heat_in(t_w)

        t_s = self.root(residual)
        q, sweat = self.outside(t_s)
        q_out = q - sweat * latent(t_s)
        if abs(t_s) < 1e-6 and 0.0 < sweat:
            q_out = self.half_frozen_surface(q, sweat)
        t_w, _ = self.inner(t_s, q_out)
        return Wall(t_w, t_s, self.sensible(t_w), self.flux(t_w), sweat)

    def root(self, residual):
        """Between the coldest and the warmest the surface can be; the residual rises with it."""
        low = min(self.t, self.s["t_amb"]) - 1.0
        high = max(self.t, self.s["t_amb"]) + 1.0
        while 0.0 < residual(low):
            low -= 5.0
        while residual(high) < 0.0:
            high += 20.0
        return brentq(residual, low, high, xtol=1e-11, rtol=1e-14)

    def half_frozen_surface(self, q, sweat):
        """The surface stays at 0 degC and its heat of freezing is what the balance asks for."""

        def residual(heat):
            t_w, through = self.inner(0.0, q - heat)
            return through - self.heat_in(t_w)

        least, most = sweat * vaporisation(0.01), sweat * sublimation(0.0)
        a, b = residual(least), residual(most)
        if a * b > 0.0:
            return q - (least if abs(a) < abs(b) else most)
        return q - brentq(residual, least, most, xtol=1e-13)
