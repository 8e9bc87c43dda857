"""Writes the direction numbers of the Sobol sequence and points that SciPy makes of them.

Direction numbers: S. Joe and F. Y. Kuo, SIAM J. Sci. Comput. 30 (2008) 2635, https://doi.org/10.1137/070709359, set 6.21201, as SciPy ships them (BSD-3).
"""

import os
from pathlib import Path

import numpy as np
import scipy
from scipy.stats import norm, qmc

DIMENSIONS = 128
ROOT = Path(__file__).resolve().parents[2]


def directions() -> str:
    """The table as Rust."""
    folder = os.path.join(os.path.dirname(scipy.__file__), "stats")
    table = np.load(os.path.join(folder, "_sobol_direction_numbers.npz"))
    lines = [
        "//! Direction numbers; written by `tests/generate/sobol.py`.",
        "",
        "/// Primitive polynomials over the field of two, all their bits, and the first direction numbers of each dimension.",
        "///",
        "/// # Source",
        "/// S. Joe and F. Y. Kuo, SIAM J. Sci. Comput. 30 (2008) 2635, set 6.21201, <https://doi.org/10.1137/070709359>.",
        f"pub(super) const DIRECTIONS: [(u32, &[u32]); {DIMENSIONS}] = [",
    ]
    for polynomial, first in zip(table["poly"][:DIMENSIONS], table["vinit"][:DIMENSIONS]):
        degree = max(int(polynomial).bit_length() - 1, 1)
        numbers = ", ".join(str(int(number)) for number in first[:degree])
        lines.append(f"    ({int(polynomial)}, &[{numbers}]),")
    return "\n".join(lines) + "\n];\n"


def rows() -> str:
    """Points, unscrambled, in SciPy's order (by Gray code), and quantiles of the normal distribution."""
    source = f"scipy {scipy.__version__}"
    sampler = qmc.Sobol(DIMENSIONS, scramble=False, bits=32)
    sampled = sampler.random(64)
    lines = ["id,source,what,first,second,expected,tolerance,kind,why"]
    for number in (1, 2, 3, 17, 40, 63):
        for dimension in (0, 1, 2, 3, 7, 20, 63, 126, 127):
            value = float(sampled[number, dimension])
            lines.append(
                f"point-{number}-{dimension},{source} qmc.Sobol,point,{number},{dimension},{value!r},0,absolute,"
                "the same binary fraction"
            )
    for share in (1e-12, 1e-6, 0.001, 0.02425, 0.075, 0.1, 0.3, 0.5, 0.6, 0.9, 0.925, 0.99, 0.999999):
        value = float(norm.ppf(share))
        lines.append(
            f"normal-{share!r},{source} norm.ppf,normal,{share!r},0,{value!r},1e-9,absolute,"
            "far below what a tolerance is known to"
        )
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    (ROOT / "crates/numeric/src/sobol/directions.rs").write_text(directions())
    (ROOT / "tests/cases/sampling.csv").write_text(rows())
