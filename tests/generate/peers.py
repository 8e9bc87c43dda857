"""Compare our dew points with those of CoolProp and psychrolib, in speed and in accuracy.

Usage: python peers.py DEW_POINTS [--coolprop-states N]
DEW_POINTS is our program: it reads states, times itself over all of them and writes their dew points.

All three answer the same million states, drawn with a fixed seed: -40 to 90 degC, 1 to 100 % relative humidity, 60 to 110 kPa,
those left out that hold more than 93 % vapour, which CoolProp refuses. Below 0.01 degC relative humidity is over ice and the dew point is the frost point, as CoolProp
and psychrolib take them. CoolProp is real gas and the measure of accuracy; it is timed on every so-manieth state, the others on all.
psychrolib is ideal gas, compiled by numba, called on whole arrays after its compilation. Everything runs on one thread.
"""

import argparse
import pathlib
import statistics
import subprocess
import tempfile
import time

import numpy as np
import psychrolib
from CoolProp.HumidAirProp import HAPropsSI

STATES = 1_000_000
SEED = 20_250_101
TURNS = 9
MOST_VAPOUR = 0.93


def saturation_pa(t):
    """IAPWS SR1-86, t in degC: good enough to leave out the states that are nearly all vapour."""
    k = t + 273.15
    tau = 1 - k / 647.096
    a = [-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502]
    n = [1, 1.5, 3, 3.5, 4, 7.5]
    return 22.064e6 * np.exp(647.096 / k * sum(ai * tau**ni for ai, ni in zip(a, n)))


def drawn_states():
    """Temperature in degC, relative humidity as a fraction, pressure in Pa."""
    generator = np.random.default_rng(SEED)
    states = generator.uniform([-40, 0.01, 60e3], [90, 1, 110e3], size=(2 * STATES, 3))
    t, rh, p = states.T
    states = states[rh * saturation_pa(t) < MOST_VAPOUR * p]
    return np.ascontiguousarray(states[:STATES])


def ours(program, states):
    """Dew points in degC and nanoseconds a state, which the program measures itself."""
    with tempfile.TemporaryDirectory() as folder:
        there, back = (pathlib.Path(folder, name) for name in ("states", "dew_points"))
        states.astype("<f8").tofile(there)
        out = subprocess.run([program, there, back], check=True, capture_output=True, text=True).stdout
        ns = next(float(line.split()[1]) for line in out.splitlines() if line.startswith("ns_per_state "))
        return np.fromfile(back, dtype="<f8"), ns


def by_psychrolib(states):
    """Dew points and the time a state of one pass over all."""
    t, rh, _ = (np.ascontiguousarray(column) for column in states.T)
    begun = time.perf_counter()
    dew_points = psychrolib.GetTDewPointFromRelHum(t, rh)
    return dew_points, (time.perf_counter() - begun) / len(states) * 1e9


def by_coolprop(states):
    """Dew points and the time a state; one call with arrays, whose loop runs in C++."""
    t, rh, p = (np.ascontiguousarray(column) for column in states.T)
    begun = time.perf_counter()
    dew_points = HAPropsSI("D", "T", t + 273.15, "R", rh, "P", p)
    return dew_points - 273.15, (time.perf_counter() - begun) / len(states) * 1e9


def accuracy(name, dew_points, reference):
    """Largest and root mean square difference from CoolProp, K."""
    error = dew_points - reference
    missing = int(np.count_nonzero(~np.isfinite(error)))
    error = error[np.isfinite(error)]
    print(f"figure dew_point_worst_{name} {np.abs(error).max():.4f} K")
    print(f"figure dew_point_rms_{name} {np.sqrt((error**2).mean()):.4f} K")
    print(f"figure dew_point_missing_{name} {missing} of {len(dew_points)}")


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program")
    parser.add_argument("--coolprop-states", type=int, default=20_000)
    arguments = parser.parse_args()
    states = drawn_states()
    step = max(1, len(states) // arguments.coolprop_states)
    some = states[::step]
    psychrolib.SetUnitSystem(psychrolib.SI)
    by_psychrolib(states[:10])  # compiles it

    # The three take turns, so that a machine that slows down for a while slows all of them.
    reference = np.empty(len(some))
    nanoseconds = []
    for turn in range(TURNS):
        reference[turn::TURNS], coolprop_ns = by_coolprop(some[turn::TURNS])
        psychrolib_points, psychrolib_ns = by_psychrolib(states)
        our_points, our_ns = ours(arguments.program, states)
        nanoseconds.append((coolprop_ns, psychrolib_ns, our_ns))

    print(f"{len(states)} states, seed {SEED}; CoolProp timed on every {step}th ({len(some)}), the others on all; medians of {TURNS} turns")
    for name, column in zip(("coolprop", "psychrolib", "ours"), zip(*nanoseconds)):
        print(f"figure dew_point_{name} {statistics.median(column):.1f} ns")
    print(f"figure ratio_coolprop {statistics.median(c / o for c, _, o in nanoseconds):.0f} x")
    print(f"figure ratio_psychrolib {statistics.median(p / o for _, p, o in nanoseconds):.1f} x")
    accuracy("ours", our_points[::step], reference)
    accuracy("psychrolib", psychrolib_points[::step], reference)


if __name__ == "__main__":
    main()
