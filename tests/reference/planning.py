"""What a season tells of the next: effort for a narrower rate, and the smallest ratio that a layout would show."""
import numpy as np
from scipy import stats

import layouts

SEASONS = 1000
POWER, ALPHA = 0.8, 0.05
FEW, DRAWS = 500, 199


def precision(case):
    """Half-width R sinh(t s) of R exp(+-t s), s^2 = 1/(R E) + 1/(n theta); theta null is Poisson."""
    rate, theta, n, effort, goal = (case[key] for key in ('rate', 'theta', 'units', 'effort', 'halfWidth'))
    clumps = 0.0 if theta is None else 1 / theta
    out, why = {'id': case['id']}, {}

    def half(units, total):
        return float(np.sinh(stats.t.ppf(0.975, units - 1) * np.sqrt(1 / (rate * total) + clumps / units)))

    out['present'] = half(n, effort) if n > 1 else None
    out['totalEffort'] = None
    if n > 1:
        room = (np.arcsinh(goal) / stats.t.ppf(0.975, n - 1)) ** 2 - clumps / n
        if room > 0:
            out['totalEffort'] = float(1 / (rate * room))
        else:
            why['totalEffort'] = 'clumping between units alone is more than that'
    else:
        why['present'] = why['totalEffort'] = 'one unit'
    out['units'] = next(k for k in range(2, 10001) if half(k, effort / n * k) <= goal)
    return {**out, **({'why': why} if why else {})}


def log_statistics(counts, expected, theta, block, hot):
    """(seasons, assignments): between-habitat sum of squares of weighted logarithms, hot as from layouts.one_hot.

    ln((c + 1/2)/expected) (Anscombe 1948) less its weighted mean in the block, weight 1/(1/m + 1/theta) with m the
    count in proportion to expected in the block, at least 1/2.
    """
    logs, mean = np.log((counts + 0.5) / expected), np.zeros_like(counts, dtype=float)
    blocks = [np.array(block) == b for b in sorted(set(block))]
    for at in blocks:
        mean[:, at] = counts[:, at].sum(axis=1, keepdims=True) / expected[at].sum() * expected[at]
    weight = 1 / (1 / np.maximum(mean, 0.5) + (0 if theta is None else 1 / theta))
    for at in blocks:
        logs[:, at] -= np.average(logs[:, at], axis=1, weights=weight[:, at])[:, None]
    flat = hot.reshape(-1, hot.shape[2]).T
    parts = ((weight * logs) @ flat) ** 2 / (weight @ flat)
    return parts.reshape(len(counts), hot.shape[0], hot.shape[1]).sum(axis=2)


def detection(case, stream):
    """Smallest ratio found with p <= 0.05 in four of five seasons, by bisection to 1 %, common random numbers."""
    expected, habitat, theta = np.array(case['expected']), case['habitat'], case['theta']
    block = case['block'] or [0] * len(habitat)
    if layouts.floor(habitat, case['block']) > ALPHA:
        return {'id': case['id'], 'ratio': None, 'why': {'ratio': 'no p so small in this layout'}}
    distinct = layouts.number_of(habitat, case['block'])
    groups = max(habitat) + 1
    every = layouts.all_assignments(habitat, case['block']) if distinct <= layouts.MOST else None
    exhaustive = 1 / layouts.floor(habitat, case['block']) <= FEW
    if not exhaustive:
        rows = np.array([shuffled(habitat, block, stream) for _ in range(DRAWS)])
        every = np.concatenate([np.array([habitat]), rows])
    hot = layouts.one_hot(every, groups)
    own = layouts.one_hot(np.array([habitat]), groups)
    uniform = stream.random_sample((SEASONS, len(habitat)))
    raised = np.array(habitat) == case['raised']

    def power(ratio):
        mean = expected * np.where(raised, ratio, 1)
        counts = stats.poisson.ppf(uniform, mean) if theta is None else \
            stats.nbinom.ppf(uniform, theta, theta / (theta + mean))
        observed = log_statistics(counts, expected, theta, block, own)
        others = log_statistics(counts, expected, theta, block, hot)
        p = np.mean(others >= observed - 1e-9 * np.maximum(1, observed), axis=1)
        return np.mean(p <= ALPHA + 1e-12)

    low, high = 1.0, 2.0
    while power(high) < POWER:
        low, high = high, 2 * high
    while high / low > 1.01:
        middle = np.sqrt(low * high)
        low, high = (low, middle) if power(middle) >= POWER else (middle, high)
    return {'id': case['id'], 'ratio': float(high)}


def shuffled(habitat, block, stream):
    row = np.array(habitat)
    for b in sorted(set(block)):
        at = np.flatnonzero(np.array(block) == b)
        row[at] = row[stream.permutation(at)]
    return row
