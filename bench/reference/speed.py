"""The same work in NumPy and SciPy, timed inside the process after a warm-up. Prints "name <tab> median seconds"."""
import itertools
import sys
import time

import numpy as np
from scipy.optimize import minimize
from scipy.stats import friedmanchisquare

rng = np.random.default_rng(7)


def median_of(work, runs=9, repeats=1):
    for _ in range(2):
        work()
    times = []
    for _ in range(runs):
        start = time.process_time()
        for _ in range(repeats):
            work()
        times.append((time.process_time() - start) / repeats)
    return sorted(times)[len(times) // 2]


def say(name, seconds):
    print(f"{name}\t{seconds:.6e}", flush=True)


table = rng.normal(size=(1000, 5))
say("friedman 1000x5 SciPy", median_of(lambda: friedmanchisquare(*table.T)))

ranks = np.argsort(np.argsort(rng.normal(size=(12, 5)), axis=1), axis=1) + 1
stack = np.broadcast_to(ranks, (10_000, 12, 5))


def permutations():
    sums = rng.permuted(stack, axis=2).sum(axis=1)
    squares = (sums * sums).sum(axis=1)
    return np.count_nonzero(squares >= (ranks.sum(axis=0) ** 2).sum())


say("permutations 12x5 NumPy", median_of(permutations))

log_worths = np.log(np.array([2.0, 1, 1, 1, 1]))


def simulation():
    # Gumbel noise on log worths ranks by the model; double argsort gives the places.
    noise = log_worths - np.log(-np.log(rng.random((20_000, 12, 5))))
    places = np.argsort(np.argsort(-noise, axis=2), axis=2)
    sums = places.sum(axis=1) - 24
    return 12 * (sums * sums).sum(axis=1) / (12 * 5 * 6)


say("simulation 20000 of 12x5 NumPy", median_of(simulation))


def null_distribution(judges, items):
    """Every attainable sum of squares, over sorted states: each step adds all orders, sorts, packs and merges."""
    orders = np.array(list(itertools.permutations(range(items))), dtype=np.int64)
    powers = 64 ** np.arange(items - 1, -1, -1, dtype=np.int64)
    states = np.arange(items, dtype=np.int64)[None, :]
    chances = np.ones(1)
    for _ in range(judges - 1):
        grown = np.sort((states[:, None, :] + orders[None, :, :]).reshape(-1, items), axis=1)
        keys, where = np.unique(grown @ powers, return_inverse=True)
        chances = np.bincount(where, weights=np.repeat(chances, len(orders))) / len(orders)
        states = (keys[:, None] // powers) % 64
    squares, where = np.unique((states * states).sum(axis=1), return_inverse=True)
    return squares, np.bincount(where, weights=chances)


say("exact null 8x5 NumPy", median_of(lambda: null_distribution(8, 5), runs=5))

true = np.linspace(0, 1.5, 10)
orders = np.argsort(-(true - np.log(-np.log(rng.random((5_000, 10))))), axis=1)
if len(sys.argv) > 1:
    np.savetxt(f"{sys.argv[1]}/orders.csv", orders, fmt="%d", delimiter=",")


def negative(theta):
    """Minus the Plackett-Luce log likelihood and its gradient, the first item held at 0."""
    full = np.concatenate(([0.0], theta))
    worths = np.exp(full)[orders]
    left = np.cumsum(worths[:, ::-1], axis=1)[:, ::-1]
    value = full[orders][:, :-1].sum() - np.log(left[:, :-1]).sum()
    shares = np.cumsum(1 / left[:, :-1], axis=1)
    shares = np.concatenate((shares, shares[:, -1:]), axis=1) * worths
    gradient = np.bincount(orders[:, :-1].ravel(), minlength=10) - np.bincount(orders.ravel(), weights=shares.ravel(), minlength=10)
    return -value, -gradient[1:]


fit = minimize(negative, np.zeros(9), jac=True, method="L-BFGS-B", options={"ftol": 1e-12, "gtol": 1e-6})
print(f"# SciPy log likelihood {-fit.fun:.6f}, {fit.nfev} evaluations")
say("plackett-luce 5000x10 SciPy", median_of(lambda: minimize(negative, np.zeros(9), jac=True, method="L-BFGS-B", options={"ftol": 1e-12, "gtol": 1e-6}), runs=5))
