"""Random routes as wide as people build them, drawn from a seed."""
import math

import numpy as np

from .moist_air import humid

BORES_MM = (4.0, 6.0, 8.0, 10.0, 13.0, 15.8, 19.0, 20.9, 25.0, 32.0, 38.0)
WALLS_MM = (0.7, 1.0, 1.5, 2.0, 2.8)
CONDUCTIVITIES = (0.16, 0.19, 0.24, 0.4, 16.0, 45.0, 390.0)
INSULATIONS_MM = (0.0, 0.0, 6.0, 9.0, 13.0, 19.0, 25.0, 40.0)
INSULATION_K = (0.022, 0.033, 0.036, 0.045)
EMISSIVITIES = (0.05, 0.1, 0.3, 0.6, 0.9, 0.95)
WINDS = (0.0, 0.0, 0.0, 0.3, 0.5, 1.5, 3.0, 6.0)
TRACINGS = (0.0, 0.0, 0.0, 0.0, 2.0, 5.0, 8.0, 12.0)


class Draw:
    def __init__(self, seed):
        self.random = np.random.Generator(np.random.PCG64(seed))

    def between(self, low, high, digits):
        return round(float(self.random.uniform(low, high)), digits)

    def one_of(self, values):
        return values[int(self.random.integers(len(values)))]

    def segment(self, p, tube, t_amb, damp):
        d_in, wall, k_wall = tube
        rh = self.between(*damp, 2)
        return {
            "length": self.between(0.3, 15.0, 2),
            "t_amb": t_amb,
            "rh_amb": rh,
            "d_in": round(d_in / 1000, 6),
            "d_out": round((d_in + 2 * wall) / 1000, 6),
            "k_wall": k_wall,
            "ins": round(self.one_of(INSULATIONS_MM) / 1000, 6),
            "k_ins": self.one_of(INSULATION_K),
            "emis": self.one_of(EMISSIVITIES),
            "wind": self.one_of(WINDS),
            "trace": self.one_of(TRACINGS),
            "vertical": self.random.random() < 0.35,
            "w_amb": humid("W", t_amb, p, R=rh),
        }

    def route(self, name, legs, flow, air, rh, space, damp):
        """Ranges: number of legs, flow, duct temperature and humidity, temperature and humidity of the surroundings."""
        p = float(round(self.between(60000.0, 108000.0, 0), -2))
        t_in = self.between(*air, 3)
        bores = (self.one_of(BORES_MM), self.one_of(WALLS_MM), self.one_of(CONDUCTIVITIES))
        least, most = flow
        # No fan drives more than about 85 m/s through the bore.
        most = max(least, min(most, 0.4 * bores[0] ** 2))
        q = math.exp(self.between(math.log(least), math.log(most), 6))
        segments = [
            self.segment(p, bores, self.between(*space, 2), damp) for _ in range(int(self.random.integers(*legs)))
        ]
        return {
            "id": name,
            "p_pa": p,
            "t_in_c": t_in,
            "w_in": humid("W", t_in, p, R=self.between(*rh, 3)),
            "q_lpm": round(q, 2),
            "segments": segments,
        }

    def whole_run(self, name, *ranges):
        case = self.route(name, *ranges)
        # 0.4 W for each L/min warm the air by some 20 K.
        case["detector_w"] = self.between(0.0, min(12.0, 0.4 * case["q_lpm"]), 2)
        case["exhaust_from"] = int(self.random.integers(1, len(case["segments"])))
        return case
