"""Half-widths that hold 95.45 % of sums of distributions, by scipy quadrature and root finding.

Each case is a list of [distribution, standard uncertainty, degrees of freedom or null].
"""

import json

import numpy as np
from scipy import integrate, optimize, special, stats

COVERAGE = 0.9544997361036416


def characteristic(kind, u, degrees, t):
    if kind == "normal":
        return np.exp(-((u * t) ** 2) / 2)
    if kind == "rectangular":
        return np.sinc(u * np.sqrt(3) * t / np.pi)
    if kind == "arcsine":
        return special.j0(u * np.sqrt(2) * t)
    if kind == "student":
        z = np.sqrt(degrees) * u * t
        return special.kv(degrees / 2, z) * z ** (degrees / 2) / special.gamma(degrees / 2) / 2 ** (degrees / 2 - 1)
    raise ValueError(kind)


def half_width(parts):
    total = np.sqrt(sum(u * u for _, u, _ in parts))
    if len(parts) == 1 and parts[0][0] == "student":
        return parts[0][1] * stats.t.ppf((1 + COVERAGE) / 2, parts[0][2])
    if all(kind in ("rectangular",) for kind, _, _ in parts) and len(parts) == 1:
        return parts[0][1] * np.sqrt(3) * COVERAGE
    if len(parts) == 1 and parts[0][0] == "arcsine":
        return parts[0][1] * np.sqrt(2) * np.sin(np.pi / 2 * COVERAGE)

    def held(h):
        # P(|X| < h) = 2/pi * integral of sin(ht)/t * phi(t)
        t = np.linspace(1e-9, 400 / total, 4_000_001)
        phi = np.prod([characteristic(kind, u, degrees, t) for kind, u, degrees in parts], axis=0)
        return 2 / np.pi * integrate.trapezoid(np.sin(h * t) / t * phi, t)

    return optimize.brentq(lambda h: held(h) - COVERAGE, 0.5 * total, 4 * total, xtol=1e-7 * total)


cases = [
    [["normal", 1, None]],
    [["rectangular", 1, None]],
    [["arcsine", 1, None]],
    [["student", 1, 3]],
    [["student", 1, 8]],
    [["rectangular", 1.7320508, None], ["rectangular", 1.1547005, None]],
    [["rectangular", 1, None], ["normal", 0.3, None]],
    [["rectangular", 1, None], ["rectangular", 1, None], ["normal", 0.5, None]],
    [["arcsine", 1, None], ["normal", 0.5, None]],
    [["rectangular", 0.02, None], ["normal", 1, None]],
    [["arcsine", 1, None], ["normal", 0.02, None]],
    [["student", 1, 3], ["normal", 0.02, None]],
    [["student", 1, 6], ["normal", 0.1, None]],
]
print(json.dumps([{"parts": parts, "halfWidth": float(half_width(parts))} for parts in cases]))
