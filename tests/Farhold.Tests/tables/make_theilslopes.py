#!/usr/bin/env python3
"""Writes theilslopes_checks.csv: Theil-Sen slopes by scipy, for the tests of PairSlopes.

Run from this folder, with Debian's python3-scipy:  /usr/bin/python3 make_theilslopes.py > theilslopes_checks.csv
"""
import warnings

import numpy as np
import scipy
from scipy.stats import theilslopes

warnings.simplefilter("error")


def cases():
    rng = np.random.default_rng(20310504)
    yield "rising-line", range(7), [2 * i + 1 for i in range(7)]
    yield "one-wild-reading", [0, 1, 2, 3, 4, 5, 6, 7], [80, 82, 84, 86, 188, 90, 92, 94]
    yield "equal-times", [0, 0, 1, 1, 2, 2, 3, 3, 4], [5, 6, 5, 7, 8, 6, 9, 8, 9]
    yield "equal-values", [0, 1, 2, 3, 4, 5, 6], [90, 90, 91, 90, 91, 91, 90]
    yield "falling-pressure", [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3], [124, 122, 118, 120, 114, 110, 112, 101, 96]
    for n in (5, 6, 7, 8, 12, 25, 60):
        yield f"noise-{n}", np.round(np.sort(rng.uniform(0, 12, n)), 3), np.round(rng.normal(90, 6, n), 3)
        yield f"whole-numbers-{n}", np.arange(n) * 0.5, np.round(rng.normal(16, 2, n))
        yield f"slope-{n}", np.arange(n) * 0.5, np.round(36 - 0.2 * np.arange(n) + rng.normal(0, 0.3, n), 1)


print(f"# scipy {scipy.__version__}, numpy {np.__version__}; made by: /usr/bin/python3 make_theilslopes.py > theilslopes_checks.csv")
print("# hours and values are separated by spaces; slope, low, high: theilslopes(alpha=0.99, method='separate')")
print("case,hours,values,slope,low,high")
for name, x, y in cases():
    x, y = np.asarray(x, float), np.asarray(y, float)
    line = theilslopes(y, x, alpha=0.99, method="separate")
    figures = [line[0], line[2], line[3]]
    print(",".join([name, " ".join(repr(float(v)) for v in x), " ".join(repr(float(v)) for v in y),
                    *(repr(float(f)) for f in figures)]))
