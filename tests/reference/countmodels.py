"""NB2 log-linear models by direct maximisation, many assignments at once: a check on MASS and the
source of the exhaustive permutation p. The log-likelihood has all its constants, as MASS has."""
import numpy as np
from scipy.special import gammaln

import layouts


def design_matrices(assignments, habitats, block):
    """Habitat dummies against the first habitat, block dummies against the first block."""
    count, sites = assignments.shape
    columns = [np.ones((count, sites))] + [(assignments == h).astype(float) for h in range(1, habitats)]
    if block:
        columns += [np.broadcast_to((np.array(block) == b).astype(float), (count, sites))
                    for b in range(1, max(block) + 1)]
    return np.stack(columns, axis=2)


def log_likelihood(y, mu, alpha, alive):
    """alpha = 1/theta per row; 0 is Poisson. Sites of a habitat without catch (not alive) add 0 in the limit."""
    mu = np.where(alive, mu, 1.0)
    alpha = np.broadcast_to(alpha[:, None], mu.shape)
    safe = np.where(alpha > 0, alpha, 1.0)
    theta = 1 / safe
    nb = (gammaln(y + theta) - gammaln(theta) - gammaln(y + 1) - (y + theta) * np.log1p(safe * mu)
          + y * np.log(safe * mu))
    # for small alpha the gamma terms cancel: sum of log1p(alpha j) instead
    rise = np.zeros_like(mu)
    top = int(y.max())
    if top:
        small = alpha[:, 0]
        table = np.concatenate([np.zeros((len(small), 1)), np.cumsum(np.log1p(small[:, None] * np.arange(top)), axis=1)], axis=1)
        rise = table[:, y.astype(int)]
    series = rise - gammaln(y + 1) - np.where(alpha > 0, (y + theta) * np.log1p(safe * mu), mu) + y * np.log(mu)
    return np.sum(np.where(alive, np.where(alpha > 1e-3, nb, series), 0.0), axis=1)


def fit_given(y, nights, x, alpha, alive, start):
    """Maximum likelihood coefficients for given alpha by scoring, all rows at once."""
    beta = start
    offset = np.log(nights)
    for _ in range(100):
        eta = np.clip(np.einsum('rsp,rp->rs', x, beta) + offset, -60, 60)
        mu = np.exp(eta)
        weight = np.where(alive, mu / (1 + alpha[:, None] * mu), 0.0)
        score = np.einsum('rsp,rs->rp', x, np.where(alive, (y - mu) / (1 + alpha[:, None] * mu), 0.0))
        information = np.einsum('rsp,rs,rsq->rpq', x, weight, x)
        # a pseudo-inverse: habitats without catch leave columns that say nothing
        step = np.einsum('rpq,rq->rp', np.linalg.pinv(information, rcond=1e-11, hermitian=True), score)
        step = np.clip(step, -3, 3)
        beta = beta + step
        if np.max(np.abs(step)) < 1e-11:
            break
    mu = np.exp(np.clip(np.einsum('rsp,rp->rs', x, beta) + offset, -60, 60))
    return beta, mu


def prepare(y, nights, assignments, habitats, block):
    x = design_matrices(assignments, habitats, block)
    caught = layouts.one_hot(assignments, habitats) @ y > 0
    alive = np.take_along_axis(caught, assignments, axis=1)
    if block:
        totals = np.bincount(block, weights=y)
        alive = alive & (totals[np.array(block)] > 0)[None]
    start = np.zeros((len(x), x.shape[2]))
    start[:, 0] = np.log(y.sum() / nights.sum())
    return x, alive, start


def supremum(y, nights, assignments, habitats, block):
    """(log-likelihood, alpha) at the maximum over coefficients and alpha >= 0, one per assignment."""
    y, nights = np.array(y, dtype=float), np.array(nights, dtype=float)
    x, alive, beta = prepare(y, nights, assignments, habitats, block)

    def profile(alpha, start):
        b, mu = fit_given(y, nights, x, alpha, alive, start)
        return log_likelihood(y, mu, alpha, alive), b

    poisson, beta = profile(np.zeros(len(x)), beta)
    grid = np.linspace(-14, 4, 37)
    heights = []
    b = beta
    for u in grid:
        height, b = profile(np.full(len(x), np.exp(u)), b)
        heights.append(height)
    best = np.argmax(np.array(heights), axis=0)
    low, high = grid[np.maximum(best - 1, 0)], grid[np.minimum(best + 1, len(grid) - 1)]
    ratio = (np.sqrt(5) - 1) / 2
    b = beta
    for _ in range(42):
        left, right = high - ratio * (high - low), low + ratio * (high - low)
        at_left, b = profile(np.exp(left), b)
        at_right, b = profile(np.exp(right), b)
        lower = at_left >= at_right
        high, low = np.where(lower, right, high), np.where(lower, low, left)
    alpha = np.exp((low + high) / 2)
    height, _ = profile(alpha, b)
    inside = height > poisson + 1e-10
    return np.where(inside, height, poisson), np.where(inside, alpha, 0.0)


def canonical(assignments, habitats):
    """Each assignment with habitats renamed in order of first appearance: same model, same likelihood."""
    out = []
    for row in assignments:
        names = {}
        out.append([names.setdefault(h, len(names)) for h in row])
    return np.array(out)
