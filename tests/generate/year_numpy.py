"""Compare a year of ours with the same relations in NumPy, vectorised over the hours.

Usage: python year_numpy.py YEAR [--cells N]
YEAR is our program: it writes the hours of the bench's year, times that year and says what deposits when nothing is carried over.

Here all hours go side by side, cell by cell along the tube, without a loop over hours, and every relation is evaluated as it is published.
Two ways to find a wall are timed: three Newton steps, begun where the cell before ended, with the state at the cell's middle from the rates of the cell before;
and halving the span between duct air and surroundings, which asks for no derivative, with two evaluations a cell.
What is carried over from hour to hour can't be done side by side and is left out here; ours is timed with it.
"""

import argparse
import math
import pathlib
import statistics
import subprocess
import tempfile
import time

import numpy as np

from doubt_monte_carlo import Air, Place, h_vapour, rates
from steady.moist_air import CP_AIR, CP_VAPOUR

TURNS = 5
P_MEAN = 101_700.0
SPACES = ((12.5, 20.0), (12.5, 12.0), (12.5, 12.0), (12.5, 20.0))
LEGS_BEFORE_DETECTOR = 2
DETECTOR_W = 3.0
NO_FACTORS = {"inside": 1.0, "outside": 1.0, "diffusivity": 1.0}
# Enhancement: Greenspan 1976, coefficients for ITS-90 by Hardy 1998, the highest power first.
WATER_ALPHA = (8.5813609e-9, 2.6168979e-7, 2.9328363e-5, 3.53624e-4)
WATER_BETA = (6.3405286e-7, -2.5368934e-4, 6.3268134e-2, -10.7588)
ICE_ALPHA = (4.3669918e-9, 4.8874766e-7, 2.9367585e-5, 3.64449e-4)
ICE_BETA = (2.4668279e-6, -1.7490155e-4, 7.6215115e-2, -10.7271)


def over_water_pa(t):
    """IAPWS SR1-86."""
    k = t + 273.15
    tau = 1 - k / 647.096
    terms = -7.85951783 * tau + 1.84408259 * tau**1.5 - 11.7866497 * tau**3
    terms += 22.6807411 * tau**3.5 - 15.9618719 * tau**4 + 1.80122502 * tau**7.5
    return 22.064e6 * np.exp(647.096 / k * terms)


def over_ice_pa(t):
    """IAPWS R14-08(2011)."""
    theta = (t + 273.15) / 273.16
    terms = -21.2144006 * theta**0.00333333333 + 27.3203819 * theta**1.20666667 - 6.1059813 * theta**1.70333333
    return 611.657 * np.exp(terms / theta)


class Year(Air):
    """Moist air at each hour's own pressure, by the published relations."""

    def __init__(self, p):
        super().__init__(P_MEAN)
        self.p = p

    def w_sat(self, t):
        is_ice = t < 0.01
        e = np.where(is_ice, over_ice_pa(t), over_water_pa(t))
        alpha = np.where(is_ice, np.polyval(ICE_ALPHA, t), np.polyval(WATER_ALPHA, t))
        beta = np.exp(np.where(is_ice, np.polyval(ICE_BETA, t), np.polyval(WATER_BETA, t)))
        x = np.exp(alpha * (1 - e / self.p) + beta * (self.p / e - 1)) * e / self.p
        return 0.621945 * x / (1 - x)

    def state(self, h, total):
        clear = (h - total * 2500.9e3) / (CP_AIR + CP_VAPOUR * total)
        excess = np.maximum(total - self.w_sat(clear), 0.0)
        # One Newton step from the clear state: what condenses warms the air.
        slope = self.w_sat(clear + 0.5) - self.w_sat(clear - 0.5)
        latent = self.latent(clear)
        mist = excess / (1 + latent * slope / CP_AIR)
        return clear + latent * mist / CP_AIR, total - mist, mist


class Wall(Place):
    """The wall of a cell for all hours; `t_s` is where its surface was in the cell before."""

    def newton(self, t_s):
        h, radiant, sweat = self.outside_rates(t_s)
        area = math.pi * self.d_surface
        out = area * (h + radiant) * (t_s - self.s["t_amb"]) - sweat * self.air.latent(t_s)
        out_slope = area * (1.2 * h + radiant)
        resistance = self.r_ins + self.r_wall
        t_w = t_s + out * resistance
        flux = self.flux(t_w)
        latent = self.air.latent(t_w)
        given = self.heat * (self.t - t_w) + flux * (latent + 0.5 * CP_VAPOUR * (self.t - t_w))
        wet = np.where(flux > 0.0, self.mass * 0.062 * self.air.w_sat(t_w) * latent, 0.0)
        given_slope = (self.heat + wet) * (1 + resistance * out_slope)
        t_s = t_s + (given - out) / (given_slope + out_slope)
        return t_s, t_w, flux


class Halved(Year):
    """The same, its mist found by halving."""

    state = Air.state


def places(p, legs, cells):
    """Length, surroundings and cells of each leg; whether it is the first behind the detector."""
    for number, (length, t_amb) in enumerate(legs):
        w_amb = 0.621945 / (p / (0.5 * over_water_pa(t_amb)) - 1)
        s = {
            "t_amb": t_amb, "w_amb": w_amb, "d_in": 0.019, "d_out": 0.022,
            "k_wall": 0.19, "ins": 0.0, "k_ins": 0.036, "emis": 0.9,
        }
        yield s, length / cells, number == LEGS_BEFORE_DETECTOR


def by_newton(hours, cells):
    """Litres that deposit, and the seconds that it took."""
    t, w, p, m = hours
    air = Year(p)
    begun = time.perf_counter()
    h, total = CP_AIR * t + w * h_vapour(t), w
    t_s, rate_h, rate_w = t, 0.0, 0.0
    litres, x = 0.0, 0.0
    for s, step, is_behind in places(p, SPACES, cells):
        if is_behind:
            h, x = h + DETECTOR_W / m, 0.0
            rate_h, rate_w = 0.0, 0.0
        for _ in range(cells):
            middle_h, middle_w = h + 0.5 * step * rate_h, total + 0.5 * step * rate_w
            t_c, w_c, _ = air.state(middle_h, middle_w)
            wall = Wall(air, s, t_c, w_c, m, x + 0.5 * step, NO_FACTORS)
            t_s, _, _ = wall.newton(t_s)
            t_s, _, _ = wall.newton(t_s)
            t_s, t_w, flux = wall.newton(t_s)
            rate_h = -(wall.heat * (t_c - t_w) + flux * h_vapour(0.5 * (t_c + t_w))) / m
            rate_w = -flux / m
            h, total, x = h + step * rate_h, total + step * rate_w, x + step
            litres += step * float(np.sum(flux)) * 3600.0
    return litres, time.perf_counter() - begun


def by_halving(hours, cells):
    """The same, walls bracketed, by the midpoint rule."""
    t, w, p, m = hours
    air = Halved(p)
    begun = time.perf_counter()
    h, total, litres, x = CP_AIR * t + w * h_vapour(t), w, 0.0, 0.0
    for s, step, is_behind in places(p, SPACES, cells):
        if is_behind:
            h, x = h + DETECTOR_W / m, 0.0
        for _ in range(cells):
            first_h, first_w = rates(air, s, h, total, m, x + 0.25 * step, NO_FACTORS)
            middle = h + 0.5 * step * first_h, total + 0.5 * step * first_w
            rate_h, rate_w = rates(air, s, *middle, m, x + 0.5 * step, NO_FACTORS)
            h, total, x = h + step * rate_h, total + step * rate_w, x + step
            litres -= step * float(np.sum(rate_w * m)) * 3600.0
    return litres, time.perf_counter() - begun


def ours(program, path):
    out = subprocess.run([program, path], check=True, capture_output=True, text=True).stdout
    told = dict(line.split() for line in out.splitlines())
    return float(told["ms"]), float(told["litres"])


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program")
    parser.add_argument("--cells", type=int, default=12)
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        path = pathlib.Path(folder, "hours")
        _, litres = ours(arguments.program, path)
        hours = np.ascontiguousarray(np.fromfile(path, dtype="<f8").reshape(-1, 4).T)
        turns = []
        for _ in range(TURNS):
            newton, newton_s = by_newton(hours, arguments.cells)
            our_ms, _ = ours(arguments.program, path)
            turns.append((newton_s * 1e3, our_ms))
        halving, halving_s = by_halving(hours, arguments.cells)
        halving_ms = halving_s * 1e3
        our_ms, _ = ours(arguments.program, path)
    print(f"{hours.shape[1]} hours, {arguments.cells} cells a leg, medians of {TURNS} turns")
    print(f"litres that deposit when nothing is carried over: NumPy {newton:.3f}, halving {halving:.3f}, ours {litres:.3f}")
    print(f"figure year_numpy {statistics.median(numpy for numpy, _ in turns):.0f} ms")
    print(f"figure year_ours {statistics.median(ms for _, ms in turns):.1f} ms")
    print(f"figure ratio_numpy_year {statistics.median(numpy / ms for numpy, ms in turns):.1f} x")
    print(f"figure ratio_numpy_year_halving {halving_ms / our_ms:.1f} x")
    for found in (newton, halving):
        if not abs(found - litres) <= 0.01 * litres:
            raise SystemExit("the litres differ by more than 1 %")


if __name__ == "__main__":
    main()
