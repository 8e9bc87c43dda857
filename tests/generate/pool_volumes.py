"""Write tests/cases/pool_volumes.csv: water at low points by SciPy quadrature of circular segments.

The section's area at each place along the tube is itself integrated over its height, so that no closed form is shared with the engine.
Depth is square to the tube at the low point and falls by the tangent with each metre of tube; a side may end after some length,
where a level stretch may follow the low point. Run from the root of the repository: python tests/generate/pool_volumes.py
"""

import csv
import pathlib

import numpy as np
import scipy
from scipy.integrate import quad

OUT = pathlib.Path("tests/cases/pool_volumes.csv")
SEED = 20260811
ROWS = 60
WHY = "the product's claim: within 1e-6 of quadrature"


def segment(depth, bore):
    """Area below a depth, by the integral of the chord with the height as the square of a sine."""
    share = min(max(depth, 0.0) / bore, 1.0)
    top = np.arcsin(np.sqrt(share))
    area, _ = quad(lambda u: 4 * (np.sin(u) * np.cos(u)) ** 2, 0, top, epsabs=0, epsrel=1e-11)
    return bore * bore * area


def side(depth, slope, length, bore):
    """Water on one side; kinks where the tube begins to be full and where the water ends."""
    end = min(length, depth / slope)
    full = min(max((depth - bore) / slope, 0.0), end)
    volume = segment(bore, bore) * full
    if full < end:
        part, _ = quad(lambda x: segment(depth - slope * x, bore), full, end, epsabs=0, epsrel=1e-9, limit=200)
        volume += part
    return volume


def main():
    random = np.random.default_rng(SEED)
    rows = []
    for number in range(ROWS):
        bore = random.uniform(0.004, 0.03)
        slopes = 10 ** random.uniform(-2.5, -0.5, 2)
        lengths = [random.choice([np.inf, random.uniform(0.05, 2.0)]) for _ in range(2)]
        level = random.choice([0.0, random.uniform(0.1, 3.0)])
        depth = bore * random.choice([random.uniform(0.02, 0.98), random.uniform(1.0, 2.5)], p=[0.7, 0.3])
        inputs = [f"{v:.9g}" for v in (bore * 1e3, *slopes, *lengths, level, depth * 1e3)]
        # Solved from the printed inputs, so that a reader of the file has the same case.
        bore, s1, s2, l1, l2, level, depth = (float(text) for text in inputs)
        bore, depth = bore / 1e3, depth / 1e3
        volume = segment(depth, bore) * level + side(depth, s1, l1, bore) + side(depth, s2, l2, bore)
        rows.append([f"PV-{number:02d}", f"SciPy {scipy.__version__} quad", *inputs, f"{volume * 1e6:.12g}", 1e-6, "relative", WHY])
    head = "id,source,bore_mm,slope_before,slope_after,length_before_m,length_after_m,level_m,depth_mm,volume_ml,tolerance,kind,why"
    with OUT.open("w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(head.split(","))
        writer.writerows(rows)
    print(f"{len(rows)} rows written")


main()
