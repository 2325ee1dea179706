"""The bootstrap of statistics.ts in numpy: the same algorithm, over replicates, species and points at once.

What a count adds to a curve is worked out once for each distinct count and then summed over species by a product of
matrices. Reads the habitats as JSON on standard input; prints seconds (the best of several runs, imports apart) and the
standard errors of the four statistics at a third of the reference size, by which the two programs are compared.
"""

import json
import sys
import time

import numpy as np
from scipy.special import exp1


def log_tail(gap, start):
    """Sum over k >= 1 of (1 - gap)^k / (start + k), row by row: a thousand terms, and an integral for the rest."""
    rate = -np.log1p(-gap)
    k = np.arange(1, 1000)
    direct = (np.exp(-np.outer(rate, k)) / (start + k)).sum(axis=1)
    at = start + 1000
    decay = np.exp(-rate * 1000)
    return direct + decay * np.exp(rate * at) * exp1(rate * at) + decay / at / 2 + decay / at * (rate + 1 / at) / 12


def mean_count_log_count(x, m, n):
    """E[K ln K] of hypergeometric K for pairs of x and m: outwards from the mode, the widest pairs first."""
    share = m / n
    width = np.ceil(9 * np.sqrt(x * share * (1 - share) * (n - x) / n + 1)) + 4
    order = np.argsort(-width, kind="stable")
    x, m, width = x[order].astype(float), m[order].astype(float), width[order]
    others = n - x
    mode = np.minimum(np.minimum(np.floor((x + 1) * (m + 1) / (n + 2)), x), m)
    highest = int(x.max())
    k_log_k = np.zeros(highest + 2)
    k_log_k[1:] = np.arange(1, highest + 2) * np.log(np.arange(1, highest + 2))
    total = np.ones(len(x))
    summed = k_log_k[mode.astype(int)]
    for up in (True, False):
        term = np.ones(len(x))
        k = mode.copy()
        place = mode.astype(int)
        room = np.minimum(x, m) - mode if up else mode - np.maximum(0, m - others)
        steps = np.minimum(width, room)
        most = int(steps.max())
        # How many of the widest still run at each step; those that have no room left carry a term of zero.
        active = np.searchsorted(-width, -np.arange(most), side="left")
        for step in range(most):
            a = active[step]
            k_, x_, m_, o_ = k[:a], x[:a], m[:a], others[:a]
            if up:
                term[:a] *= (x_ - k_) * (m_ - k_) / ((k_ + 1) * np.maximum(o_ - m_ + k_ + 1, 1))
                k_ += 1
                place[:a] += 1
            else:
                term[:a] *= k_ * np.maximum(o_ - m_ + k_, 0) / ((x_ - k_ + 1) * (m_ - k_ + 1))
                k_ -= 1
                place[:a] -= 1
            total[:a] += term[:a]
            summed[:a] += term[:a] * k_log_k[np.clip(place[:a], 0, highest)]
    result = np.empty(len(x))
    result[order] = summed / total
    return result


def replicates(counts, sizes, coverages, runs, seed):
    n = int(counts.sum())
    f1, f2 = (counts == 1).sum(), (counts == 2).sum()
    unseen = (n - 1) / n * (f1**2 / (2 * f2) if f2 > 0 else f1 * (f1 - 1) / 2)
    singleton = 2 * f2 / ((n - 1) * f1 + 2 * f2) if f2 > 0 else 2 / ((n - 1) * (f1 - 1) + 2) if f1 > 0 else 1.0
    deficit = f1 / n * (1 - singleton)
    share = counts / n
    absent = (1 - share) ** n
    new = int(np.ceil(unseen))
    adjusted = share * (1 - (deficit / (share * absent).sum() if new > 0 else 0) * absent)
    chances = np.concatenate([adjusted, np.full(new, deficit / new)]) if new > 0 else adjusted
    drawn = np.random.default_rng(seed).multinomial(n, chances / chances.sum(), size=runs)

    values, index = np.unique(drawn, return_inverse=True)
    rows = np.repeat(np.arange(runs), drawn.shape[1])
    species_of = np.bincount(rows * len(values) + index.ravel(), minlength=runs * len(values))
    species_of = species_of.reshape(runs, len(values)).astype(float)
    if values[0] == 0:
        values, species_of = values[1:], species_of[:, 1:]
    of_count = dict(zip(values, species_of.T))
    nothing = np.zeros(runs)
    f1, f2 = of_count.get(1, nothing), of_count.get(2, nothing)
    species = species_of.sum(axis=1)
    pairs = species_of @ (values * (values - 1.0))
    shares = values / n
    observed = -(species_of @ (shares * np.log(shares)))
    with np.errstate(divide="ignore", invalid="ignore"):
        singleton = np.where(f1 == 0, 1, np.where(f2 > 0, 2 * f2 / ((n - 1) * f1 + 2 * f2), 2 / ((n - 1) * (f1 - 1) + 2)))
        unseen = (n - 1) / n * np.where(f2 > 0, f1**2 / (2 * f2), f1 * (f1 - 1) / 2)
        rate0 = np.where(unseen > 0, np.log1p(-f1 / (n * unseen + f1)), 0)
        lower = np.log1p(-singleton)
    reached = 1 - f1 / n * (1 - singleton)
    harmonic = np.concatenate([[0], np.cumsum(1 / np.arange(1, n))])
    core = species_of @ (shares * (harmonic[n - 1] - harmonic[values - 1]))
    entropy = core + np.where(f1 > 0, f1 / n * log_tail(np.minimum(singleton, 1 - 1e-16), n - 1), 0)
    asymptotic = np.stack([np.exp(entropy), n * (n - 1) / pairs], axis=1)

    def simpson(m):
        return 1 / (1 / m + (m - 1) / m * (pairs / (n * (n - 1.0)))[:, None])

    def extrapolated(m):
        more = m - n
        return np.stack(
            [
                species[:, None] - unseen[:, None] * np.expm1(more * rate0[:, None]),
                np.exp(n / m * observed[:, None] + more / m * entropy[:, None]),
                simpson(m),
            ],
            axis=2,
        )

    below = sizes[sizes < n]
    beyond = sizes[sizes > n].astype(float)
    log_factorial = np.concatenate([[0], np.cumsum(np.log(np.arange(1, n + 1)))])
    x, m = np.meshgrid(values, below, indexing="ij")
    left = n - x - m
    fits = left >= 0
    absence = np.where(
        fits, np.exp(log_factorial[n - x] + log_factorial[n - m] - log_factorial[np.maximum(left, 0)] - log_factorial[n]), 0
    )
    missed = absence * n / (n - m)
    expected = mean_count_log_count(x.ravel(), m.ravel(), n).reshape(x.shape)
    curve = np.empty((runs, len(sizes), 4))
    b = len(below)
    curve[:, :b, 0] = 1 - species_of @ (shares[:, None] * missed)
    curve[:, :b, 1] = species_of @ (1 - absence)
    curve[:, :b, 2] = np.exp(np.log(below) - species_of @ expected / below)
    curve[:, :b, 3] = simpson(below.astype(float))
    curve[:, b] = np.stack([reached, species, np.exp(observed), n * n / (pairs + n)], axis=1)
    curve[:, b + 1 :, 0] = 1 - (f1 / n)[:, None] * np.exp(lower[:, None] * (beyond - n + 1))
    curve[:, b + 1 :, 1:] = extrapolated(beyond)

    known = curve[:, : b + 1, 0]
    above = np.minimum((known[:, :, None] <= coverages).sum(axis=1), b)
    under = np.maximum(above - 1, 0)
    row = np.arange(runs)[:, None]
    width = known[row, above] - known[row, under]
    along = np.where(width > 0, np.maximum(0, (coverages - known[row, under]) / np.where(width > 0, width, 1)), 0)
    low = curve[row, under, 1:]
    by_coverage = low + along[:, :, None] * (curve[row, above, 1:] - low)
    with np.errstate(divide="ignore", invalid="ignore"):
        size = n + (np.log(n / f1)[:, None] + np.log1p(-coverages)) / lower[:, None] - 1
    farther = coverages >= reached[:, None]
    with np.errstate(invalid="ignore", over="ignore"):
        by_coverage = np.where(farther[:, :, None], extrapolated(np.where(farther, size, n + 1)), by_coverage)
    return np.concatenate([asymptotic, curve.reshape(runs, -1), by_coverage.reshape(runs, -1)], axis=1)


def main():
    habitats = json.load(sys.stdin)
    times = []
    cpu = []
    for _ in range(3):
        start, busy = time.perf_counter(), time.process_time()
        errors = []
        for seed, habitat in enumerate(habitats):
            sizes = np.array(habitat["sizes"])
            table = replicates(
                np.array(habitat["counts"]), sizes, np.array(habitat["coverages"]), habitat["replicates"], seed
            )
            at = 2 + 4 * int(np.searchsorted(sizes, sizes[sizes <= habitat["individuals"]][-1] // 3))
            errors.append(table[:, at : at + 4].std(axis=0, ddof=1).tolist())
        times.append(time.perf_counter() - start)
        cpu.append(time.process_time() - busy)
    print(json.dumps({"seconds": min(times), "cpuSeconds": min(cpu), "errors": errors, "numpy": np.__version__}))


main()
