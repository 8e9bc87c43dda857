"""Solves steady routes independently of the engine, with an adaptive integrator over the published relations.

    python steady_oracle.py check FILE             solve each case of FILE and compare with its `expect`
    python steady_oracle.py draw SEED > FILE       draw and solve 60 further cases

Versions: requirements.txt.  The relations and their sources stand in steady/.
"""
import json
import sys

from steady.draw import Draw
from steady.march import Route

# kind, cases, legs, flow, duct temperature and humidity, temperature and humidity of the surroundings.
KINDS = (
    ("wide", 12, (1, 7), (0.8, 120.0), (-30.0, 55.0), (0.05, 0.99), (-30.0, 55.0), (0.05, 0.98)),
    ("frost", 10, (1, 7), (0.8, 120.0), (-10.0, 25.0), (0.50, 0.98), (-30.0, -2.0), (0.05, 0.98)),
    ("damp", 8, (1, 7), (0.8, 120.0), (15.0, 50.0), (0.60, 0.98), (0.0, 45.0), (0.05, 0.98)),
    ("clammy", 8, (1, 4), (20.0, 120.0), (-25.0, 15.0), (0.30, 0.98), (10.0, 45.0), (0.60, 0.98)),
    ("fog", 10, (1, 2), (0.8, 120.0), (15.0, 45.0), (0.93, 0.999), (-25.0, 10.0), (0.05, 0.98)),
    ("whole", 12, (2, 7), (0.8, 120.0), (0.0, 45.0), (0.30, 0.999), (-20.0, 45.0), (0.05, 0.98)),
)

# (relative, absolute) for each value of `expect`, as tests/cases/README.md states them.
TOLERANCE = {
    "m_dry_air_kg_s": (0.002, 0.0),
    "condensate_g_h": (0.01, 0.02),
    "leg_condensate_g_h": (0.01, 0.02),
    "leg_sweat_g_h": (0.02, 0.05),
    "t_out_c": (0.0, 0.1),
    "min_wall_c": (0.0, 0.1),
    "chamber_t_c": (0.0, 0.1),
    "w_out": (0.005, 0.0),
    "mist_out": (0.05, 2e-5),
    "max_mist": (0.05, 2e-5),
    "chamber_mist": (0.05, 2e-5),
    "chamber_rh": (0.0, 0.005),
    "onset_m": (0.0, 0.1),
}


# Heat tracing under thick insulation at little flow ends in temperatures that no tube stands; such routes are drawn again.
HOTTEST_WALL_C = 80.0

# A humidity ratio is known to no better than this (0.005 K of dew point). Where it moves the first wet place
# by more than half its tolerance, the case would judge the saturation curve and not the march: drawn again.
HUMIDITY_DOUBT = 3e-4
LARGEST_SHIFT_M = 0.05


def well_posed(case, route):
    if HOTTEST_WALL_C < route.max_wall:
        return False
    for share in (1 - HUMIDITY_DOUBT, 1 + HUMIDITY_DOUBT):
        other = Route({**case, "w_in": case["w_in"] * share})
        other.solve()
        if not holds(other.onset, route.onset, 0.0, LARGEST_SHIFT_M):
            return False
    return True


def solved(source, kind, name, ranges):
    while True:
        case = source.whole_run(name, *ranges) if kind == "whole" else source.route(name, *ranges)
        route = Route(case)
        case["expect"] = route.solve()
        if well_posed(case, route):
            return case


def draw(seed):
    source = Draw(seed)
    cases = [
        solved(source, kind, f"{kind}-{number:03d}", ranges)
        for kind, count, *ranges in KINDS
        for number in range(count)
    ]
    print("[\n" + ",\n".join(json.dumps(case) for case in cases) + "\n]")


def holds(got, expected, relative, absolute):
    if got is None or expected is None:
        return got is expected
    return abs(got - expected) <= max(absolute, relative * abs(expected))


def check(path):
    with open(path, encoding="utf-8") as file:
        cases = json.load(file)
    missed = 0
    for case in cases:
        got = Route(case).solve()
        for key, expected in case["expect"].items():
            pairs = zip(got[key], expected) if isinstance(expected, list) else [(got[key], expected)]
            for value, wanted in pairs:
                if not holds(value, wanted, *TOLERANCE[key]):
                    missed += 1
                    print(case["id"], key, value, wanted)
    print(f"{len(cases)} cases, {missed} values missed")
    return missed


if __name__ == "__main__":
    if sys.argv[1] == "check":
        sys.exit(check(sys.argv[2]) != 0)
    draw(int(sys.argv[2]))
