"""Print the Bond number below which a liquid plug can span a horizontal round tube, and a polynomial through it.

Criterion of Manning, Collicott & Finn, J. Fluid Mech. 682 (2011) 397: a plug of any length stands as long as for every part
of the cross-section, bounded by an arc G inside and a part S of the wall, |G| > |integral of (B y + L) - cos(theta) |S||,
with L such that the whole cross-section is in balance, and the radius as the unit of length.
The arcs that come first to equality are curves of curvature B y + L that meet the wall at the contact angle;
at 90 degrees the arc is the diameter and B = 3 exactly.
Run from the root of the repository: python tests/generate/horizontal_lock.py
"""

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import newton

DEGREES = np.arange(90, 19.9, -2.5)
ORDER = 4


def curve(bond, balance, start):
    """The symmetric curve from its lowest point on the axis to the wall: x, y, angle, area and moment so far, and its length."""

    def slope(_, state):
        x, y, angle, _, _ = state
        c, s = np.cos(angle), np.sin(angle)
        return [c, s, bond * y + balance, x * s - y * c, -y * y * c]

    def wall(_, state):
        return state[0] ** 2 + state[1] ** 2 - 1

    wall.terminal, wall.direction = True, 1
    solved = solve_ivp(slope, (0, 20), [0, start, 0, 0, 0], events=wall, rtol=1e-12, atol=1e-14)
    return solved.t_events[0][0], solved.y_events[0][0]


def excess(bond, theta, start):
    """What keeps the angle from the contact angle, and |G| - integral + cos(theta) |S|."""
    cosine = np.cos(theta)
    length, (x, y, angle, area, moment) = curve(bond, 2 * cosine, start)
    phi = np.arctan2(y, x)
    whole = area + (np.pi - 2 * phi) / 2
    weighted = moment + np.cos(phi) - np.cos(phi) ** 3 / 3
    off = np.sin(angle - phi) - cosine
    return off, 2 * length + cosine * (np.pi - 2 * phi) - bond * weighted - 2 * cosine * whole


def at_contact_angle(bond, theta, near):
    """The lowest point of the curve that meets the wall at the contact angle."""
    return newton(lambda start: excess(bond, theta, start)[0], near, x1=near - 0.005, tol=1e-12)


def main():
    # From the exact answer at 90 degrees step by step to the smaller angles.
    bond, start, values = 3.0, 0.0, []
    for degrees in DEGREES:
        theta = np.radians(degrees)
        least = lambda b: excess(b, theta, at_contact_angle(b, theta, start))[1]
        bond = newton(least, bond, x1=bond - 0.03, tol=1e-9)
        start = at_contact_angle(bond, theta, start)
        values.append(bond)
        print(f"{degrees:4.1f} degrees: {bond:.6f}")
    squares = (np.pi / 2 - np.radians(DEGREES)) ** 2
    fit = np.polynomial.Polynomial.fit(squares, values, ORDER, domain=[-1, 1])
    print("in rising powers of the square of 90 degrees less the angle, in radians:", ", ".join(f"{c:.9g}" for c in fit.coef))
    print(f"largest error {np.max(np.abs(fit(squares) / values - 1)):.1e}")


main()
