"""Weighted straight lines by scipy.optimize.curve_fit with absolute uncertainties; prints straightLine.json."""

import json

import numpy as np
from scipy import optimize

CASES = {
    "two points": ([0.0, 5.12], [121.6, 117.2], [0.02, 0.05]),
    "four of one weight": ([0.0, 2.5, 3.8, 5.1], [121.61, 119.88, 118.62, 117.19], [0.03, 0.03, 0.03, 0.03]),
    "weights a hundredfold apart": (
        [0.0, 1.304, 2.603, 5.42, 9.9],
        [117.1, 115.9, 115.3, 110.8, 104.2],
        [0.3, 0.003, 0.05, 0.12, 0.4],
    ),
    "far from zero": ([101.0, 102.5, 104.0], [229.8, 228.1, 225.9], [0.4, 0.2, 0.3]),
}


def line(x, intercept, slope):
    return intercept + slope * x


def jacobian(x, intercept, slope):
    return np.stack([np.ones_like(x), x], axis=1)


out = {}
for name, (x, y, u) in CASES.items():
    x, y, u = np.array(x), np.array(y), np.array(u)
    best, cov = optimize.curve_fit(
        line, x, y, p0=[y[0], 0.0], sigma=u, absolute_sigma=True, jac=jacobian, method="lm", xtol=1e-15, ftol=1e-15
    )
    out[name] = {
        "x": x.tolist(),
        "y": y.tolist(),
        "u": u.tolist(),
        "intercept": best[0],
        "slope": best[1],
        "interceptVariance": cov[0, 0],
        "slopeVariance": cov[1, 1],
        "covariance": cov[0, 1],
        "chiSquare": float(np.sum(((y - line(x, *best)) / u) ** 2)),
    }
print(json.dumps(out, indent=2))
