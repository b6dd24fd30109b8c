#!/usr/bin/env python3
"""The plan of Program.cs in numpy, on one thread: lognormal legs that share half their luck, arrival at every leg's end kept.
Run with OMP_NUM_THREADS=1 after, or beside, `dotnet run -c Release --project tools/bench-way`. Needs python3-numpy."""
import math
import sys
import time

import numpy as np

LEGS, Z90 = int(sys.argv[1]) if len(sys.argv) > 1 else 6, 1.2815515655446004
TRIALS = int(sys.argv[2]) if len(sys.argv) > 2 else 262_144


def run(rng):
    shared = rng.standard_normal(TRIALS)
    arrivals = np.empty((LEGS, TRIALS))
    clock = np.zeros(TRIALS)
    for i in range(1, LEGS + 1):
        p10, p90 = 600.0 * i, 2400.0 * i
        mu, sigma = (math.log(p10) + math.log(p90)) / 2, math.log(p90 / p10) / (2 * Z90)
        z = math.sqrt(0.5) * shared + math.sqrt(0.5) * rng.standard_normal(TRIALS)
        clock += np.exp(mu + sigma * z)
        arrivals[i - 1] = clock
    return arrivals


rng = np.random.default_rng(1)
run(rng)
for name, clock in (("processor time", time.process_time), ("wall", time.perf_counter)):
    best = math.inf
    for _ in range(40 if TRIALS > 100_000 else 400):
        begun = clock()
        arrivals = run(rng)
        best = min(best, clock() - begun)
    print(f"numpy {np.__version__}, {LEGS} legs, {TRIALS} trials, {name}: {best * 1000:.3f} ms, {LEGS * TRIALS / best / 1e6:.1f} million leg samples/s")
print(f"median {np.median(arrivals[-1]) / 3600:.2f} h, P90 {np.quantile(arrivals[-1], 0.9) / 3600:.2f} h")
