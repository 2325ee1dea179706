"""Shares of the catch: ratio estimate between sampling units, or the exact binomial limits."""
import numpy as np
from scipy import stats

LEVEL = 0.975


def share(part, whole):
    """Cochran 1977, section 3.12, on the logit scale; one unit, none or all: Clopper & Pearson 1934."""
    a, m = (np.array(v, dtype=float) for v in (part, whole))
    a, m = a[m > 0], m[m > 0]
    if len(m) == 0:
        return {'share': None, 'se': None, 'lower': None, 'upper': None, 'interval': None,
                'why': {'share': 'no animals'}}
    p, total, n = a.sum() / m.sum(), m.sum(), len(m)
    if n == 1 or p in (0.0, 1.0):
        lower, upper = clopper_pearson(int(a.sum()), int(total))
        return {'share': p, 'se': None, 'lower': lower, 'upper': upper, 'interval': 'exact'}
    between = n / (n - 1) * np.sum((a - p * m) ** 2) / total ** 2
    se = np.sqrt(max(between, p * (1 - p) / total))
    logit, half = np.log(p / (1 - p)), stats.t.ppf(LEVEL, n - 1) * se / (p * (1 - p))
    lower, upper = (float(1 / (1 + np.exp(-(logit + side * half)))) for side in (-1, 1))
    return {'share': p, 'se': float(se), 'lower': lower, 'upper': upper, 'interval': 'ratio'}


def clopper_pearson(part, whole):
    lower = stats.beta.ppf(1 - LEVEL, part, whole - part + 1) if part else 0.0
    upper = stats.beta.ppf(LEVEL, part + 1, whole - part) if part < whole else 1.0
    return float(lower), float(upper)
