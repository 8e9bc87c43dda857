"""A whole route: both tubes integrated by an adaptive scheme, the detector between them."""
import numpy as np
from CoolProp.CoolProp import HAPropsSI
from scipy.integrate import solve_ivp

from .moist_air import MoistAir, h_vapour
from .wall import Place

G_H = 3.6e6
RTOL = 1e-8
LOOK = 600  # places looked at in each segment for the first wet one, the coldest wall and the most mist


class Route:
    def __init__(self, case):
        self.case = case
        self.air = MoistAir(case["p_pa"])
        t, w = case["t_in_c"], case["w_in"]
        self.m = case["q_lpm"] / 60000 * self.air.density_real(t, w) / (1 + w)
        self.h, self.w_total = self.air.enthalpy(t, w), w
        self.onset = None
        self.min_wall = None
        self.max_wall = t
        self.max_mist = 0.0
        self.condensate, self.sweat, self.profile = [], [], []

    def solve(self):
        tube_start, x = 0.0, 0.0
        chamber = {}
        for number, segment in enumerate(self.case["segments"]):
            if number == self.case.get("exhaust_from"):
                chamber, tube_start = self.detector(), x
            self.segment(segment, tube_start, x)
            x += segment["length"]
        t, w, mist = self.air.state(self.h, self.w_total)
        return {
            "m_dry_air_kg_s": self.m,
            "condensate_g_h": sum(self.condensate),
            "t_out_c": t,
            "w_out": w,
            "mist_out": mist,
            "max_mist": self.max_mist,
            "onset_m": self.onset,
            "leg_condensate_g_h": self.condensate,
            "leg_sweat_g_h": self.sweat,
            "min_wall_c": self.min_wall,
            **chamber,
        }

    def detector(self):
        self.h += self.case["detector_w"] / self.m
        t, w, mist = self.air.state(self.h, self.w_total)
        rh = HAPropsSI("R", "T", t + 273.15, "P", self.air.p, "W", w) if mist == 0.0 else 1.0
        return {"chamber_t_c": t, "chamber_rh": rh, "chamber_mist": mist}

    def place(self, segment, x, h, w_total):
        t, w, mist = self.air.state(h, w_total)
        return Place(self.air, segment, t, w, self.m, x), mist

    def segment(self, segment, tube_start, x0):
        """x = s^3 from the tube's inlet takes the entry's x^(-1/3) and x^(-2/3) out of the equations."""
        s0 = (x0 - tube_start) ** (1 / 3)
        s1 = (x0 - tube_start + segment["length"]) ** (1 / 3)

        def rates(s, y):
            s = max(s, 1e-5)
            place, _ = self.place(segment, s**3, y[0], y[1])
            wall = place.solve()
            dx = 3 * s * s
            t_f = 0.5 * (place.t + wall.t_inner)
            energy = wall.sensible + wall.flux * h_vapour(t_f)
            return [-energy / self.m * dx, -wall.flux / self.m * dx, wall.sweat * dx]

        start = [self.h, self.w_total, 0.0]
        answer = solve_ivp(
            rates, (s0, s1), start, method="RK45", rtol=RTOL, atol=[1e-5, 1e-11, 1e-14],
            dense_output=True, max_step=(s1 - s0) / 25,
        )
        if not answer.success:
            raise ArithmeticError(f"{self.case['id']}: {answer.message}")
        self.look(segment, tube_start, s0, s1, answer.sol)
        self.condensate.append(self.m * (self.w_total - float(answer.y[1][-1])) * G_H)
        self.sweat.append(float(answer.y[2][-1]) * G_H)
        self.h, self.w_total = float(answer.y[0][-1]), float(answer.y[1][-1])

    def look(self, segment, tube_start, s0, s1, sol):
        """First wet place, coldest wall (from one bore behind the inlet on), most mist."""
        dry = None
        one_bore = segment["d_in"] ** (1 / 3)
        places = np.append(np.linspace(max(s0, 1e-3), s1, LOOK), one_bore if s0 <= one_bore <= s1 else s1)
        for s in np.sort(places):
            place, mist = self.place(segment, s**3, *sol(s)[:2])
            self.max_mist = max(self.max_mist, float(mist))
            wall = place.solve()
            self.max_wall = max(self.max_wall, wall.t_inner)
            if one_bore <= s and (self.min_wall is None or wall.t_inner < self.min_wall):
                self.min_wall = float(wall.t_inner)
            if self.onset is None:
                if 0.0 < wall.flux:
                    first = s if dry is None else self.first_wet(segment, dry, s, sol)
                    self.onset = tube_start + float(first) ** 3
                dry = s

    def first_wet(self, segment, dry, wet, sol):
        while 1e-7 < wet - dry:
            mid = 0.5 * (dry + wet)
            place, _ = self.place(segment, mid**3, *sol(mid)[:2])
            if 0.0 < place.solve().flux:
                wet = mid
            else:
                dry = mid
        return wet
