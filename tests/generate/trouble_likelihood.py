"""Writes `tests/cases/trouble_likelihood.csv`: how likely counts of events are under hourly hazards, and the background and scale that fit best, by SciPy.

Each row is `id,source,hazards..,events..,as_is,scale,scaled,background,scale_with_background,both,tolerance,kind,why`; twelve hours each.
"""

from pathlib import Path

import numpy as np
import scipy
from scipy.optimize import brentq
from scipy.stats import poisson

HOURS = 12
ROWS = 40
PATH = Path(__file__).resolve().parents[1] / "cases/trouble_likelihood.csv"


def log_likelihood(expected, events):
    return float(poisson.logpmf(events, expected).sum())


def best_share(hazard, events):
    """The share of events that the hazard made: the root of the profile's slope, by Brent's method."""
    ratios = hazard * HOURS / hazard.sum()

    def slope(share):
        return float((events * (ratios - 1) / (1 + share * (ratios - 1))).sum())

    if slope(0.0) <= 0:
        return 0.0
    if slope(1 - 1e-15) >= 0:
        return 1.0
    return brentq(slope, 0.0, 1 - 1e-15, xtol=1e-16, rtol=1e-15, maxiter=500)


def row(number, random):
    hazard = random.lognormal(-3.0, 1.5, HOURS)
    if number % 5 == 0:
        hazard[random.integers(HOURS)] = 0.0
    at_random = random.uniform(0.05, 0.5)
    events = random.poisson(hazard * random.uniform(1, 6) + at_random * random.uniform())
    if events.sum() == 0:
        events[random.integers(HOURS)] = 1
    as_is = log_likelihood(np.where(hazard == 0, 1e-3, hazard), events)
    hazard = np.where(hazard == 0, 1e-3, hazard)
    scale = events.sum() / hazard.sum()
    share = best_share(hazard, events)
    background = (1 - share) * events.sum() / HOURS
    both = share * events.sum() / hazard.sum()
    values = [
        as_is,
        scale,
        log_likelihood(scale * hazard, events),
        background,
        both,
        log_likelihood(background + both * hazard, events),
    ]
    fields = [f"TL-{number:02}", f"SciPy {scipy.__version__}"]
    fields += [repr(float(one)) for one in hazard]
    fields += [str(int(one)) for one in events]
    fields += [repr(float(one)) for one in values]
    return ",".join([*fields, "1e-9", "relative", "sums of logarithms in another order"])


def main():
    random = np.random.default_rng(20261126)
    head = ["id", "source"]
    head += [f"hazard_{hour}" for hour in range(HOURS)]
    head += [f"events_{hour}" for hour in range(HOURS)]
    head += ["as_is", "scale", "scaled", "background", "scale_with_background", "both"]
    head += ["tolerance", "kind", "why"]
    lines = [",".join(head), *(row(number, random) for number in range(ROWS))]
    PATH.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
