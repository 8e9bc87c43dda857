"""Chance of water and spread of condensate of five steady routes, by 20 000 cases drawn by chance.

    python doubt_monte_carlo.py > ../cases/doubt.json

Plain Monte Carlo over the relations of steady/, written for arrays of cases: no line is shared with the engine.
Assumed values vary as triangular distributions, relations by the factors that the engine states:
inside film 25 %, natural convection outside 20 %, diffusivity inside 3 %.
The routes stand at the border between wet and dry, where a chance is hardest to meet; all walls are above 0 degC.
"""
import json
import math

import numpy as np

from steady.films import SIGMA, G
from steady.moist_air import (
    COLLISION, CP_AIR, CP_VAPOUR, EPSILON_K, M_AIR, M_AIR_G, M_WATER, R_AIR, RATIO, SIGMA_NM, MoistAir, h_vapour, humid,
    vaporisation,
)

CASES = 20_000
SEED = 20_260_511
CELLS = 40
HALVINGS = 30
G_H = 3.6e6
WET_G_H = 0.01
WET_MIST = 1e-5


class Air:
    """Moist air at one pressure, for arrays: saturation by interpolation in fine tables."""

    def __init__(self, p_pa):
        self.p = p_pa
        exact = MoistAir(p_pa)
        self.t = np.linspace(0.02, 80.0, 8001)
        self.ln_w = np.array([math.log(exact.w_sat(t)) for t in self.t])
        self.heat = np.array([vaporisation(t) for t in self.t])

    def w_sat(self, t):
        return np.exp(np.interp(t, self.t, self.ln_w))

    def latent(self, t):
        return np.interp(t, self.t, self.heat)

    def density(self, t, w):
        return self.p * (1 + w) / (R_AIR * (t + 273.15) * (1 + w / RATIO))

    def diffusivity(self, t):
        return 2.178e-5 * ((t + 273.15) / 273.15) ** 1.81 * 101325.0 / self.p

    def state(self, h, total):
        """Temperature, vapour and mist."""
        clear = (h - total * 2500.9e3) / (CP_AIR + CP_VAPOUR * total)
        is_clear = total <= self.w_sat(clear)
        low, high = clear.copy(), np.full_like(clear, 79.0)
        for _ in range(HALVINGS):
            mid = 0.5 * (low + high)
            w = np.minimum(total, self.w_sat(mid))
            held = CP_AIR * mid + w * h_vapour(mid) + (total - w) * (h_vapour(mid) - self.latent(mid))
            low, high = np.where(held < h, mid, low), np.where(held < h, high, mid)
        t = np.where(is_clear, clear, 0.5 * (low + high))
        w = np.where(is_clear, total, np.minimum(total, self.w_sat(t)))
        return t, w, total - w


def air_viscosity(t):
    ln = np.log(t / EPSILON_K)
    omega = np.exp(sum(b * ln**i for i, b in enumerate(COLLISION)))
    return 0.0266958 * np.sqrt(M_AIR_G * t) / (SIGMA_NM**2 * omega) * 1e-6


def air_conductivity(t):
    tau = 132.6312 / t
    return 1e-3 * (1.308 * air_viscosity(t) * 1e6 + 1.405 * tau**-1.1 - 1.036 * tau**-0.3)


def steam_viscosity(t):
    r = t / 647.096
    return 100.0 * np.sqrt(r) / sum(h / r**i for i, h in enumerate((1.67752, 2.20462, 0.6366564, -0.241605))) * 1e-6


def steam_conductivity(t):
    r = t / 647.096
    terms = (2.443221e-3, 1.323095e-2, 6.770357e-3, -3.454586e-3, 4.096266e-4)
    return np.sqrt(r) / sum(h / r**i for i, h in enumerate(terms)) * 1e-3


def wilke(mu_i, mu_j, m_i, m_j):
    return (1 + np.sqrt(mu_i / mu_j) * (m_j / m_i) ** 0.25) ** 2 / math.sqrt(8 * (1 + m_i / m_j))


def transport(t_c, w):
    t = t_c + 273.15
    x_w = w / (RATIO + w)
    x_a = 1 - x_w
    mu_a, mu_w = air_viscosity(t), steam_viscosity(t)
    aw, wa = wilke(mu_a, mu_w, M_AIR, M_WATER), wilke(mu_w, mu_a, M_WATER, M_AIR)
    mu = x_a * mu_a / (x_a + x_w * aw) + x_w * mu_w / (x_w + x_a * wa)
    k_a, k_w = air_conductivity(t), steam_conductivity(t)
    return mu, x_a * k_a / (x_a + 1.065 * x_w * aw) + x_w * k_w / (x_w + 1.065 * x_a * wa)


def laminar(re, pr, d_x):
    return (3.66**3 + 0.7**3 + (1.077 * (re * pr * d_x) ** (1 / 3) - 0.7) ** 3) ** (1 / 3)


def turbulent(re, pr, d_x):
    f8 = (1.8 * np.log10(re) - 1.5) ** -2 / 8
    developed = f8 * (re - 1000) * pr / (1 + 12.7 * np.sqrt(f8) * (pr ** (2 / 3) - 1))
    return developed * (1 + d_x ** (2 / 3) / 3)


def inside_number(re, pr, d_x):
    share = np.clip((re - 2300) / 1700, 0.0, 1.0)
    low = laminar(np.minimum(re, 2300.0), pr, d_x)
    return (1 - share) * low + share * turbulent(np.maximum(re, 4000.0), pr, d_x)


class Place:
    """The wall at one place, for all cases at once."""

    def __init__(self, air, s, t, w, m_dry, x, factors):
        self.air, self.s, self.t, self.w, self.factors = air, s, t, w, factors
        w_in = np.minimum(w, air.w_sat(t))
        mu, k = transport(t, w_in)
        rho, diff = air.density(t, w_in), air.diffusivity(t) * factors["diffusivity"]
        re = 4 * m_dry * (1 + w_in) / (math.pi * s["d_in"] * mu)
        pr = mu * (CP_AIR + CP_VAPOUR * w_in) / ((1 + w_in) * k)
        d_x = s["d_in"] / x
        self.heat = math.pi * k * inside_number(re, pr, d_x) * factors["inside"]
        self.mass = math.pi * rho * diff * inside_number(re, mu / (rho * diff), d_x) * factors["inside"]
        self.d_surface = s["d_out"] + 2 * s["ins"]
        self.r_wall = math.log(s["d_out"] / s["d_in"]) / (2 * math.pi * s["k_wall"])
        self.r_ins = math.log(self.d_surface / s["d_out"]) / (2 * math.pi * s["k_ins"])

    def flux(self, t_w):
        w_wall = self.air.w_sat(t_w)
        return np.where(w_wall < self.w, self.mass * np.log((1 + self.w) / (1 + w_wall)), 0.0)

    def outside_rates(self, t_s):
        """Convection and radiation, W/(m2 K), and the sweat that forms, kg/(m s)."""
        s, d = self.s, self.d_surface
        t_a = s["t_amb"]
        t_f = 0.5 * (t_s + t_a)
        tk = t_f + 273.15
        mu, k, rho = air_viscosity(tk), air_conductivity(tk), self.air.p / (R_AIR * tk)
        nu_v, pr = mu / rho, mu * CP_AIR / k
        ra = G / tk * np.maximum(np.abs(t_s - t_a), 1e-6) / nu_v**2 * d**3 * pr
        nu = (0.60 + 0.387 * (ra / (1 + (0.559 / pr) ** (9 / 16)) ** (16 / 9)) ** (1 / 6)) ** 2 * self.factors["outside"]
        h = nu * k / d
        a, b = t_s + 273.15, t_a + 273.15
        radiant = s["emis"] * SIGMA * (a * a + b * b) * (a + b)
        mass = h / CP_AIR * (pr * self.air.diffusivity(t_f) / nu_v) ** (2 / 3)
        w_s = self.air.w_sat(t_s)
        sweat = np.where(w_s < s["w_amb"], math.pi * d * mass * np.log((1 + s["w_amb"]) / (1 + w_s)), 0.0)
        return h, radiant, sweat

    def outside(self, t_s):
        """Heat that leaves the surface, latent heat of sweat taken off."""
        h, radiant, sweat = self.outside_rates(t_s)
        return math.pi * self.d_surface * (h + radiant) * (t_s - self.s["t_amb"]) - sweat * self.air.latent(t_s)

    def solve(self):
        low = np.minimum(self.t, self.s["t_amb"]) - 2.0
        high = np.maximum(self.t, self.s["t_amb"]) + 2.0
        for _ in range(HALVINGS):
            mid = 0.5 * (low + high)
            q = self.outside(mid)
            t_w = mid + q * (self.r_ins + self.r_wall)
            flux = self.flux(t_w)
            given = self.heat * (self.t - t_w)
            given = given + flux * (self.air.latent(t_w) + 0.5 * CP_VAPOUR * (self.t - t_w))
            too_warm = given < q
            low, high = np.where(too_warm, low, mid), np.where(too_warm, mid, high)
        t_s = 0.5 * (low + high)
        t_w = t_s + self.outside(t_s) * (self.r_ins + self.r_wall)
        return t_w, self.flux(t_w)


def tube(air, segments, h, total, m, factors):
    """Enthalpy, water and condensate behind a tube; cells even in the cube root of the distance, midpoint rule."""
    x0, condensate = 0.0, 0.0
    for s in segments:
        x1 = x0 + s["length"]
        edges = np.linspace(x0 ** (1 / 3), x1 ** (1 / 3), CELLS + 1) ** 3
        for a, b in zip(edges, edges[1:]):
            first = rates(air, s, h, total, m, max(a, 1e-4), factors)
            step = 0.5 * (b - a)
            # Behind the inlet itself the rates have no value: there the middle alone is used.
            if a == 0.0:
                middle = rates(air, s, h, total, m, b / 8, factors)
            else:
                middle = rates(air, s, h + step * first[0], total + step * first[1], m, a + step, factors)
            h, total = h + (b - a) * middle[0], total + (b - a) * middle[1]
            condensate = condensate - (b - a) * middle[1] * m
        x0 = x1
    return h, total, condensate


def rates(air, s, h, total, m, x, factors):
    t, w, _ = air.state(h, total)
    place = Place(air, s, t, w, m, x, factors)
    t_w, flux = place.solve()
    energy = place.heat * (t - t_w) + flux * h_vapour(0.5 * (t + t_w))
    return -energy / m, -flux / m


def draw(random, low, usual, high):
    return random.triangular(low, usual, high, CASES)


def run(case):
    random = np.random.Generator(np.random.PCG64(SEED))
    air = Air(case["p_pa"])
    segments = [dict(s) for s in case["segments"]]
    flow = {"q_lpm": case["q_lpm"], "t_in_c": case["t_in_c"], "w_in": case["w_in"]}
    for varied in case["varied"]:
        values = draw(random, varied["low"], varied["usual"], varied["high"])
        for number in varied.get("segments", []):
            segments[number][varied["what"]] = values
        if "segments" not in varied:
            flow[varied["what"]] = values
    factors = {
        "inside": draw(random, 0.75, 1.0, 1.25),
        "outside": draw(random, 0.80, 1.0, 1.20),
        "diffusivity": draw(random, 0.97, 1.0, 1.03),
    }
    t, w = flow["t_in_c"] + np.zeros(CASES), flow["w_in"] + np.zeros(CASES)
    m = flow["q_lpm"] / 60000 * air.density(t, w) / (1 + w)
    h = CP_AIR * t + w * h_vapour(t)
    split = case.get("exhaust_from", len(segments))
    h, total, intake = tube(air, segments[:split], h, w, m, factors)
    mist, exhaust = np.zeros(CASES), np.zeros(CASES)
    h = h + case.get("detector_w", 0.0) / m
    _, _, mist = air.state(h, total)
    if split < len(segments):
        h, total, exhaust = tube(air, segments[split:], h, total, m, factors)
    intake, exhaust = intake * G_H, exhaust * G_H
    wet = (intake > WET_G_H) | (exhaust > WET_G_H) | (mist > WET_MIST)
    return float(np.mean(wet)), [float(v) for v in np.quantile(intake, (0.1, 0.5, 0.9))]


def leg(length, t_amb, rh, p, **more):
    base = {"length": length, "t_amb": t_amb, "d_in": 0.019, "d_out": 0.022, "k_wall": 0.19, "ins": 0.0, "k_ins": 0.036}
    base.update({"emis": 0.9, "wind": 0.0, "trace": 0.0, "vertical": False, "w_amb": humid("W", t_amb, p, R=rh)})
    base.update(more)
    return base


def span(what, low, usual, high, *segments):
    found = {"what": what, "low": low, "usual": usual, "high": high}
    return {**found, "segments": list(segments)} if segments else found


def routes():
    p = 101325.0
    w = lambda t, rh: humid("W", t, p, R=rh)  # noqa: E731
    yield {
        "id": "corridor", "p_pa": p, "t_in_c": 32.0, "w_in": w(20.3, 1.0), "q_lpm": 30.0,
        "segments": [leg(1.0, 26.0, 0.4, p), leg(8.0, 20.0, 0.4, p)],
        "varied": [span("t_amb", 16.0, 20.0, 24.0, 1), span("t_amb", 22.0, 26.0, 32.0, 0), span("emis", 0.85, 0.9, 0.95, 0, 1)],
    }
    yield {
        "id": "insulated", "p_pa": p, "t_in_c": 24.0, "w_in": w(8.5, 1.0), "q_lpm": 15.0,
        "segments": [leg(6.0, 5.0, 0.6, p, ins=0.019), leg(2.0, 20.0, 0.4, p)],
        "varied": [
            span("t_amb", 2.0, 5.0, 12.0, 0), span("k_ins", 0.030, 0.036, 0.045, 0), span("q_lpm", 10.0, 15.0, 25.0),
            span("t_in_c", 22.0, 24.0, 27.0),
        ],
    }
    yield {
        "id": "metal", "p_pa": 84000.0, "t_in_c": 28.0, "w_in": humid("W", 17.0, 84000.0, R=1.0), "q_lpm": 60.0,
        "segments": [leg(12.0, 15.0, 0.5, 84000.0, d_in=0.0209, d_out=0.0267, k_wall=45.0, emis=0.3)],
        "varied": [span("t_amb", 12.0, 15.0, 22.0, 0), span("emis", 0.2, 0.3, 0.6, 0), span("w_in", 0.0135, 0.0146, 0.0160)],
    }
    yield {
        "id": "exhaust", "p_pa": p, "t_in_c": 27.0, "w_in": w(19.0, 1.0), "q_lpm": 20.0, "exhaust_from": 1, "detector_w": 3.0,
        "segments": [leg(4.0, 22.0, 0.5, p), leg(7.0, 16.0, 0.5, p)],
        "varied": [span("t_amb", 18.0, 22.0, 25.0, 0), span("t_amb", 12.0, 18.5, 22.0, 1), span("q_lpm", 15.0, 20.0, 30.0)],
    }
    yield {
        "id": "short", "p_pa": p, "t_in_c": 35.0, "w_in": w(23.0, 1.0), "q_lpm": 45.0,
        "segments": [leg(2.5, 18.0, 0.5, p)],
        "varied": [span("t_amb", 14.0, 20.0, 28.0, 0), span("w_in", 0.0165, 0.0178, 0.0190), span("k_wall", 0.16, 0.19, 0.22, 0)],
    }


def main():
    solved = []
    for case in routes():
        chance, water = run(case)
        solved.append({**case, "chance": chance, "intake_g_h": water})
    print("[\n" + ",\n".join(json.dumps(case) for case in solved) + "\n]")


if __name__ == "__main__":
    main()
