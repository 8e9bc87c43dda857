"""Write tests/cases/moist_air_grid.csv: dew points of real moist air from CoolProp.

CoolProp takes relative humidity over ice below 0.01 degC, and its dew point is the frost point there.
Run from the root of the repository: python tests/generate/moist_air_grid.py
"""

import csv
import math
import pathlib

import CoolProp
from CoolProp.HumidAirProp import HAPropsSI

OUT = pathlib.Path("tests/cases/moist_air_grid.csv")
TEMPERATURES_C = range(-40, 91, 5)
HUMIDITIES_PERCENT = [1, 2, 5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95, 100]
PRESSURES_PA = [60_000, 80_000, 101_325, 110_000]

WHY = "the product's claim: within 0.01 K of the real-gas model"


def main():
    source = f"CoolProp {CoolProp.__version__} HAPropsSI"
    rows = []
    left_out = 0
    for p in PRESSURES_PA:
        for t in TEMPERATURES_C:
            for rh in HUMIDITIES_PERCENT:
                state = ("T", t + 273.15, "R", rh / 100, "P", p)
                try:
                    dew, w = (HAPropsSI(key, *state) for key in ("D", "W"))
                except ValueError:
                    dew = w = math.nan
                if not (math.isfinite(dew) and math.isfinite(w) and 0 < w):
                    left_out += 1
                    continue
                rest = [f"{dew - 273.15:.4f}", 0.01, "absolute", WHY]
                rows.append([f"TR-{p // 1000}-{t}-{rh}", source, t, rh, "", p, *rest])
                rows.append([f"TW-{p // 1000}-{t}-{rh}", source, t, "", f"{w:.9g}", p, *rest])
    with OUT.open("w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow("id,source,t_c,rh_percent,w,p_pa,expected,tolerance,kind,why".split(","))
        writer.writerows(rows)
    print(f"{len(rows)} rows written, {left_out} states without an answer left out")


main()
