"""Write tests/cases/friction_losses.csv: friction factors and loss coefficients from fluids.

Friction: Churchill 1977 over Reynolds numbers and roughness. Pools: sharp contraction by Crane with an angle of 180 degrees
and sudden expansion by Borda and Carnot, both on the narrow bore, for bores whose areas are in the ratio of the free share.
Run from the root of the repository: python tests/generate/friction_losses.py
"""

import csv
import math
import pathlib

import fluids

OUT = pathlib.Path("tests/cases/friction_losses.csv")
REYNOLDS = [round(10 ** (k / 4), 3) for k in range(4, 33)] + [2000, 2100, 2300, 2600, 3000, 3500, 4000]
ROUGHNESS = [0, 1e-5, 1e-4, 1e-3, 0.01, 0.05]
FREE = [0.02, 0.1, 0.25, 0.5, 0.75, 0.9, 1.0]
PIPES = [(0.004, 5, 1), (0.006, 8, 3), (0.012, 20, 8), (0.019, 30, 25), (0.025, 110, 40)]


def main():
    source = f"fluids {fluids.__version__}"
    rows = []
    for re in sorted(REYNOLDS):
        for rough in ROUGHNESS:
            f = fluids.friction.Churchill_1977(re, rough)
            rows.append(["FRI", source, re, rough, "", f"{f:.12g}", 1e-9, "relative", "the same formula"])
    for free in FREE:
        narrow = math.sqrt(free)
        k = fluids.fittings.contraction_conical_Crane(Di1=1.0, Di2=narrow, l=0) if free < 1 else 0.0
        k += fluids.fittings.diffuser_sharp(Di1=narrow, Di2=1.0)
        rows.append(["END", source, "", "", free, f"{k:.12g}", 1e-9, "absolute", "the same formula"])
    for d, q, length in PIPES:
        v = q / 60000 / (math.pi / 4 * d * d)
        re = fluids.Reynolds(V=v, D=d, rho=1.2, mu=1.82e-5)
        k = fluids.K_from_f(fd=fluids.friction.Churchill_1977(re, 1.5e-6 / d), L=length, D=d)
        dp = fluids.dP_from_K(K=k, rho=1.2, V=v)
        rows.append(["PIP", source, q, d, length, f"{dp:.12g}", 1e-8, "relative", "the same formulas"])
    with OUT.open("w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow("id,source,a,b,c,expected,tolerance,kind,why".split(","))
        writer.writerows([[f"{row[0]}-{n}", *row[1:]] for n, row in enumerate(rows, 1)])
    print(f"{len(rows)} rows written")


main()
