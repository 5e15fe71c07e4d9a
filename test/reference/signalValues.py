"""Reference values for the signal room from numpy and scipy, independent of this project.

Run with any numpy >= 1.24 and scipy >= 1.10; it prints JSON, which is kept beside it as signalValues.json.
"""

import json

import numpy as np
from scipy import linalg, optimize, signal, special

rng = np.random.default_rng(20240214)

spectrum_in = np.round(rng.normal(size=16), 6)
spectrum_out = np.fft.rfft(spectrum_in)

matrix = rng.normal(size=(5, 5))
matrix = np.round(matrix @ matrix.T + 5 * np.eye(5), 6)
right = np.round(rng.normal(size=5), 6)

# A wave with harmonics, an offset and noise on 2.3 cycles, fitted by scipy's general least squares.
samples = 400
t = np.arange(samples) - (samples - 1) / 2
omega = 2 * np.pi * 2.3 / samples
wave = 3 + 100 * np.sin(omega * t + 0.4) + 7 * np.sin(3 * omega * t + 2) + 2 * np.cos(5 * omega * t)
wave = np.round(wave + rng.normal(scale=1.5, size=samples), 4)


def model(p):
    value = np.full(samples, p[1])
    for k in range(1, 6):
        value = value + p[2 * k] * np.cos(k * p[0] * t) + p[2 * k + 1] * np.sin(k * p[0] * t)
    return value


def jacobian(p):
    columns = [np.zeros(samples), np.ones(samples)]
    for k in range(1, 6):
        columns[0] = columns[0] + k * t * (p[2 * k + 1] * np.cos(k * p[0] * t) - p[2 * k] * np.sin(k * p[0] * t))
        columns += [np.cos(k * p[0] * t), np.sin(k * p[0] * t)]
    return np.stack(columns, axis=1)


start = np.zeros(12)
start[0] = omega * 1.01
start[3] = 90
fit = optimize.least_squares(lambda p: model(p) - wave, start, jac=jacobian, xtol=1e-15, ftol=1e-15, gtol=1e-15, x_scale="jac")
variance = 2 * fit.cost / (samples - 12)
covariance = variance * linalg.inv(fit.jac.T @ fit.jac)

hann = signal.get_window("hann", 64)


def kaiser_bessel(back):
    """Weights of 13 bins, the first `back` before the line, by a kernel 12 bins wide."""
    beta = np.pi * np.sqrt(36 * 2.25 - 0.8)
    inside = 1 - ((back - np.arange(13)) / 6) ** 2
    s = beta * np.sqrt(np.maximum(inside, 0))
    return {"back": back, "weights": np.where(inside >= 0, special.i0e(s) * np.exp(s - beta) / special.i0e(beta), 0).tolist()}


print(
    json.dumps(
        {
            "spectrum": {"in": spectrum_in.tolist(), "re": spectrum_out.real.tolist(), "im": spectrum_out.imag.tolist()},
            "solve": {
                "matrix": matrix.ravel().tolist(),
                "right": right.tolist(),
                "x": linalg.solve(matrix, right).tolist(),
                "inverseDiagonal": np.diag(linalg.inv(matrix)).tolist(),
            },
            "fit": {
                "samples": wave.tolist(),
                "start": omega * 1.01,
                "omega": fit.x[0],
                "mean": fit.x[1],
                "cosine": fit.x[2::2].tolist(),
                "sine": fit.x[3::2].tolist(),
                "noise": float(np.sqrt(variance)),
                "deviation": np.sqrt(np.diag(covariance)).tolist(),
            },
            "kaiserBessel": [kaiser_bessel(back) for back in (6, 5.9999, 5.75, 5.4, 5.123456789, 5.0005)],
            "hannNoiseBandwidthBins": float(64 * np.sum(hann**2) / np.sum(hann) ** 2),
        }
    )
)
