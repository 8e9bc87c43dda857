"""Compare a year of ours with the same relations in NumPy, vectorised over the hours.

Usage: python year_numpy.py YEAR [--cells N]
YEAR is our program: it writes the hours of the bench's year, times that year and says what deposits when nothing is carried over.

Here all hours go side by side, cell by cell along the tube, without a loop inside a cell: three Newton steps for the surface,
begun where the cell before ended, and the state at the cell's middle from the rates of the cell before.
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

from doubt_monte_carlo import Air, Place, h_vapour
from steady.moist_air import CP_AIR, CP_VAPOUR

TURNS = 5
P_MEAN = 101_700.0
SPACES = ((12.5, 20.0), (12.5, 12.0), (12.5, 12.0), (12.5, 20.0))
LEGS_BEFORE_DETECTOR = 2
DETECTOR_W = 3.0
NO_FACTORS = {"inside": 1.0, "outside": 1.0, "diffusivity": 1.0}


class Year(Air):
    """Moist air at each hour's own pressure: the table stands at the mean one, by which saturation is corrected to first order."""

    def __init__(self, p):
        super().__init__(P_MEAN)
        self.p = p
        self.grid = self.t
        self.x = np.exp(self.ln_w) / (0.621945 + np.exp(self.ln_w))

    def w_sat(self, t):
        x = np.interp(t, self.grid, self.x) * (P_MEAN / self.p)
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


def march(hours, cells):
    """Litres that deposit, and the seconds that it took."""
    t, w, p, m = hours
    air = Year(p)
    begun = time.perf_counter()
    h, total = CP_AIR * t + w * h_vapour(t), w
    t_s, rate_h, rate_w = t, 0.0, 0.0
    litres, x = 0.0, 0.0
    for leg, (length, t_amb) in enumerate(SPACES):
        if leg == LEGS_BEFORE_DETECTOR:
            h, x = h + DETECTOR_W / m, 0.0
            rate_h, rate_w = 0.0, 0.0
        s = {
            "t_amb": t_amb, "w_amb": 0.621945 / (p / (0.5 * saturation_pa(t_amb)) - 1), "d_in": 0.019, "d_out": 0.022,
            "k_wall": 0.19, "ins": 0.0, "k_ins": 0.036, "emis": 0.9,
        }
        step = length / cells
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


def saturation_pa(t_c):
    """IAPWS SR1-86."""
    k = t_c + 273.15
    tau = 1 - k / 647.096
    a = (-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502)
    return 22.064e6 * math.exp(647.096 / k * sum(ai * tau**ni for ai, ni in zip(a, (1, 1.5, 3, 3.5, 4, 7.5))))


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
            found, seconds = march(hours, arguments.cells)
            our_ms, _ = ours(arguments.program, path)
            turns.append((seconds * 1e3, our_ms))
    print(f"{hours.shape[1]} hours, {arguments.cells} cells a leg, medians of {TURNS} turns")
    print(f"litres that deposit when nothing is carried over: NumPy {found:.3f}, ours {litres:.3f}")
    print(f"figure year_numpy {statistics.median(numpy for numpy, _ in turns):.0f} ms")
    print(f"figure year_ours {statistics.median(ms for _, ms in turns):.1f} ms")
    print(f"figure ratio_numpy_year {statistics.median(numpy / ms for numpy, ms in turns):.1f} x")
    if not abs(found - litres) <= 0.01 * litres:
        raise SystemExit("the litres differ by more than 1 %")


if __name__ == "__main__":
    main()
