#!/usr/bin/env python3
"""Makes published/scipy-statistics.csv: what SciPy and NumPy make of the statistics that the engine uses.

Run with a Python that has SciPy: python3 published/scipy-statistics.py
Each line: kind | numbers put in | numbers that come out, at 17 digits.
"""
import json
import platform
from pathlib import Path

import numpy as np
import scipy
from scipy import optimize, stats

HERE = Path(__file__).parent
lines = []


def line(kind, put_in, came_out):
    def text(numbers):
        return " ".join(repr(float(number)) for number in np.ravel(numbers))

    lines.append(f"{kind}|{text(put_in)}|{text(came_out)}")


DEGREES = [1, 1.5, 2, 3, 4.5, 6, 7.3, 10, 14, 20, 26, 40, 75, 120, 400]
for degrees in DEGREES:
    for share in [0.0005, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9, 0.95, 0.975, 0.99, 0.999]:
        line("t_quantile", [share, degrees], stats.t.ppf(share, degrees))
    for t in [-12, -4, -2.1, -1, -0.3, 0, 0.2, 0.7, 1.2, 1.9, 3.3, 8]:
        line("t_probability", [t, degrees], stats.t.cdf(t, degrees))

for share in [1e-300, 1e-50, 1e-12, 1e-6, 0.001, 0.01, 0.05, 0.075, 0.2, 0.3, 0.5, 0.6, 0.8, 0.925, 0.95, 0.975, 0.99, 0.999, 1 - 1e-9]:
    line("normal_quantile", [share], stats.norm.ppf(share))

for shape in [0.5, 1, 2.5, 7, 30]:
    mean, variance, skewness, kurtosis = stats.gamma.stats(shape, moments="mvsk")
    line("gamma_moments", [shape], [mean, variance, skewness, kurtosis])
    line("gamma_quantiles", [shape, 0.05, 0.25, 0.5, 0.75, 0.95], stats.gamma.ppf([0.05, 0.25, 0.5, 0.75, 0.95], shape))


def conjugate(kind, mean, precision, shape, scale, x, y, at):
    """The update by stacked least squares and an explicit inverse, another way than the engine's."""
    root = np.linalg.cholesky(precision).T
    stacked = np.vstack([root, x])
    updated = np.linalg.lstsq(stacked, np.concatenate([root @ mean, y]), rcond=None)[0]
    after = precision + x.T @ x
    new_shape = shape + len(y) / 2
    new_scale = scale + 0.5 * (y @ y + mean @ precision @ mean - updated @ after @ updated)
    spread = np.sqrt(new_scale / new_shape * (1 + at @ np.linalg.inv(after) @ at))
    edge = at @ updated + spread * stats.t.ppf(0.95, 2 * new_shape)
    line(
        kind,
        np.concatenate([[len(mean), len(y)], mean, np.ravel(precision), [shape, scale], np.ravel(x), y, at]),
        np.concatenate([updated, np.ravel(after), [new_shape, new_scale, at @ updated, spread, edge]]),
    )


random = np.random.default_rng(20260127)
for size, count in [(1, 3), (2, 1), (2, 8), (3, 5), (3, 30)]:
    b = random.normal(size=(size, size))
    x = np.column_stack([np.ones(count), random.normal(size=(count, size - 1))])
    conjugate(
        "conjugate_update",
        random.normal(size=size),
        b.T @ b + np.eye(size),
        1 + 4 * random.random(),
        0.05 + random.random(),
        x,
        x @ random.normal(size=size) + 0.3 * random.normal(size=count),
        np.concatenate([[1], random.normal(size=size - 1)]),
    )

# The depth law on the operating rows of process.json, before the prior is widened: 42 V, 45 degrees.
MELTING_ENERGY = 10e9
x, y = [], []
for row in json.loads((HERE / "process.json").read_text()):
    if row["quantity"] != "operating row":
        continue
    diameter = row["inputs"]["electrode_diameter_mm"] / 1000
    travel, depth = row["output"]["travel_mm_per_min"], row["output"]["depth_mm"]
    ends = zip(travel, depth) if isinstance(travel, list) else [(travel, sum(depth) / 2)]
    for v, h in ends:
        q = 42 * row["inputs"]["current_A"] / (v / 60000 * diameter**2 * MELTING_ENERGY)
        x.append([1, np.log(q), 0])
        y.append(np.log(h / 1000 / diameter))
conjugate(
    "depth_law",
    np.array([-0.84, 1.5, 0.05]),
    np.diag([0.01, 0.01, 5.3]),
    1,
    0.0529,
    np.array(x),
    np.array(y),
    np.array([1, 0.3, 0.5]),
)


def circle(radius, half_angle, count, noise):
    angle = np.linspace(-half_angle, half_angle, count)
    r = radius + noise * random.normal(size=count)
    points = np.column_stack([0.002 + r * np.sin(angle), 0.001 + r * np.cos(angle)])
    design = np.column_stack([2 * points, np.ones(count)]) / [1, 1, radius]
    a, b, c = np.linalg.lstsq(design, (points**2).sum(axis=1), rcond=None)[0]
    algebraic = np.sqrt(c / radius + a * a + b * b)
    geometric = optimize.least_squares(
        lambda p: (np.hypot(points[:, 0] - p[0], points[:, 1] - p[1]) - p[2]) / radius, [a, b, algebraic], xtol=1e-14, ftol=1e-14
    ).x[2]
    line("circle_fit", points, [algebraic, geometric])


circle(0.008, 1.2, 25, 0)
circle(0.008, 1.2, 40, 5e-5)
circle(0.0065, 0.7, 30, 2e-5)
circle(0.02, 0.4, 50, 1e-5)

header = [
    f"# Made by published/scipy-statistics.py with SciPy {scipy.__version__}, NumPy {np.__version__}, Python {platform.python_version()}.",
    "# kind|numbers put in|numbers that come out",
]
(HERE / "scipy-statistics.csv").write_text("\n".join(header + lines) + "\n")
