"""Standard errors from the assemblage bootstrap of Chao et al. 2014, appendix G, in numpy's own stream."""
import numpy as np
from mpmath import mp
from scipy.special import digamma

import exact
from individuals import Sample
from units import Units

REPLICATES = 2000


def assemblage(shares, deficit, size, unseen):
    """Detected p (1 - lambda (1-p)^size) and ceil(f0) undetected species that share the deficit."""
    shares = np.array([float(p) for p in shares])
    extra = int(mp.ceil(unseen))
    if extra == 0 or deficit == 0:
        return shares
    lam = deficit / np.sum(shares * (1 - shares) ** size)
    return np.concatenate([shares * (1 - lam * (1 - shares) ** size), np.full(extra, deficit / extra)])


class Evaluator:
    """Observed, doubled and asymptotic Hill numbers of many samples of one size, in double precision."""

    def __init__(self, size, units):
        self.size, self.units, self.tails = size, units, {}

    def tail(self, f1, f2):
        if (f1, f2) not in self.tails:
            self.tails[f1, f2] = float(exact.tail_series(f1, f2, self.size))
        return self.tails[f1, f2]

    def __call__(self, counts):
        x = counts[counts > 0]
        n, total = self.size, x.sum()
        if total == 0:
            return None
        s, f1, f2 = len(x), int((x == 1).sum()), int((x == 2).sum())
        p = x / total
        observed = -np.sum(p * np.log(p))
        core = np.sum(x / n * (digamma(n) - digamma(x))) + (f1 / n * self.tail(f1, f2) if f1 else 0.0)
        pairs = np.sum(x * (x - 1.0))
        asymptotic = n / total * core + np.log(total / n) if self.units else core
        square = total ** 2 * (1 - 1 / n) if self.units else n * (n - 1.0)
        q2_at = lambda m: 1 / ((n / (m * total) if self.units else 1 / m) + (m - 1) / m * pairs / square)
        f0 = float(exact.unseen(f1, f2, n))
        doubled = s + f0 * (1 - (1 - f1 / (n * f0 + f1)) ** n) if f0 > 0 else float(s)
        a = float(exact.undetected_share(f1, f2, n))
        return [s, np.exp(observed), 1 / np.sum(p ** 2),
                doubled, np.exp((observed + asymptotic) / 2), q2_at(2.0 * n),
                s + f0, np.exp(asymptotic), square / pairs if pairs else np.nan,
                1 - f1 / total * (1 - a)]


def standard_errors(case, by_id, stream):
    if case['of'] == 'abundance':
        sample = Sample(by_id['abundance'][case['id']]['counts'])
        size, whole = sample.n, sample.n
        p = assemblage(sample.shares(), float(1 - sample.coverage(size)), size, sample.f0)
        draws = stream.multinomial(size, p / p.sum(), size=REPLICATES)
    else:
        source = by_id['incidence'][case['id']]
        sample = Units(source['units'], [row.count('1') for row in source['species']])
        size, whole = sample.t, sample.u
        share = float(sample.u * (1 - sample.coverage(size)) / size)
        p = assemblage([exact.mpf(y) / size for y in sample.y], share, size, sample.unseen)
        draws = stream.binomial(size, p, size=(REPLICATES, len(p)))
    evaluate = Evaluator(size, case['of'] == 'incidence')
    values = np.array([v for v in map(evaluate, draws) if v is not None], dtype=float)
    se = np.nanstd(values, axis=0, ddof=1)
    out = {'id': case['id'], 'of': case['of'], 'replicates': REPLICATES, 'size': whole if case['of'] == 'abundance' else size}
    for key, start in (('atN', 0), ('atTwiceN', 3), ('asymptotic', 6)):
        out[key] = [float(v) for v in se[start:start + 3]]
    out['coverage'] = float(se[9])
    return out
