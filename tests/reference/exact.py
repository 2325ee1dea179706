"""Exact and high-precision pieces shared by the abundance and incidence statistics.

Everything that cancels in double precision is done in 50 digits (mpmath) or, for long runs of
hypergeometric terms, in the 80-bit long double, started at the mode from a 50-digit value.
"""
from functools import lru_cache

import numpy as np
from mpmath import mp, mpf

mp.dps = 50
LONG = np.longdouble
Z = mp.sqrt(2) * mp.erfinv(mpf('0.95'))


@lru_cache(maxsize=None)
def log_factorial(k):
    return mp.loggamma(k + 1)


@lru_cache(maxsize=None)
def digamma(k):
    return mp.digamma(k)


def missed(x, n, m):
    """choose(n - x, m) / choose(n, m): the chance that m of n, without replacement, hold none of x."""
    if m > n - x:
        return mpf(0)
    return mp.exp(log_factorial(n - x) - log_factorial(n - x - m) - log_factorial(n) + log_factorial(n - m))


def hypergeometric(x, n, m):
    """(first k, probabilities) that m of n, without replacement, hold k of x; far tails left out."""
    low, high = max(0, m - (n - x)), min(x, m)
    mode = min(max((x + 1) * (m + 1) // (n + 2), low), high)
    log_mode = (log_factorial(x) - log_factorial(mode) - log_factorial(x - mode)
                + log_factorial(n - x) - log_factorial(m - mode) - log_factorial(n - x - m + mode)
                - log_factorial(n) + log_factorial(m) + log_factorial(n - m))
    at_mode = LONG(mp.nstr(mp.exp(log_mode), 30))
    spread = 60 + int(16 * np.sqrt(m * (x / n) * (1 - x / n) * (n - m) / max(n - 1, 1)))
    low, high = max(low, mode - spread), min(high, mode + spread)
    up = np.arange(mode, high, dtype=LONG)
    rise = (x - up) * (m - up) / ((up + 1) * (n - x - m + up + 1))
    down = np.arange(mode, low, -1, dtype=LONG)
    fall = down * (n - x - m + down) / ((x - down + 1) * (m - down + 1))
    below = np.cumprod(fall)[::-1]
    above = np.cumprod(rise)
    return low, at_mode * np.concatenate([below, np.ones(1, dtype=LONG), above])


def entropy_of_subsample(groups, n, m, scale):
    """sum over k of -(k/scale) ln(k/scale) f_k, f_k expected number of species with k in a subsample of m of n.

    groups: {abundance: number of species}; scale: m for individuals, m U / T for sampling units.
    """
    total = LONG(0)
    for x, species in groups.items():
        low, probability = hypergeometric(x, n, m)
        k = np.arange(low, low + len(probability), dtype=LONG)
        share = k / LONG(scale)
        term = np.where(k > 0, -share * np.log(np.where(k > 0, share, 1)), 0)
        total += species * np.sum(term * probability)
    return mpf(str(total))


@lru_cache(maxsize=None)
def tail_series(f1, f2, n):
    """sum over r >= n of (1-A)^(r-n+1) / r (Chao, Wang & Jost 2013), as one integral, no difference.

    sum z^(r-n+1)/r = (z/n) integral_0^inf exp(-v) / (1 - z exp(-v/n)) dv,  z = 1 - A.
    """
    z = 1 - undetected_share(f1, f2, n)
    if z == 0:
        return mpf(0)
    with mp.workdps(30):
        # break points near where the integrand bends: v = n A and v = 1
        bend = n * (1 - z)
        points = sorted({mpf(0), min(bend, mpf(1)), bend, mpf(1), mpf(10), mpf(80)})
        points = [p for p in points if p <= 80]
        value = mp.quad(lambda v: mp.exp(-v) / (-mp.expm1(mp.log(z) - v / n)), points)
    return +(z / n * value)


def undetected_share(f1, f2, n):
    """A of README.md: the Good-Turing mean share of a species caught once."""
    if f1 == 0:
        return mpf(1)
    if f2 > 0:
        return mpf(2 * f2) / ((n - 1) * f1 + 2 * f2)
    return mpf(2) / ((n - 1) * (f1 - 1) + 2)


def entropy_core(groups, n):
    """sum (x/n) (sum_{k=x}^{n-1} 1/k) + (f1/n) tail: the estimator of Chao, Wang & Jost 2013."""
    f1, f2 = groups.get(1, 0), groups.get(2, 0)
    first = sum(s * mpf(x) / n * (digamma(n) - digamma(x)) for x, s in groups.items())
    return first + (mpf(f1) / n * tail_series(f1, f2, n) if f1 else 0)


def unseen(f1, f2, n):
    """f0 of Chao1 (n individuals) or Q0 of Chao2 (n sampling units), unrounded."""
    k = mpf(n - 1) / n
    return k * mpf(f1) ** 2 / (2 * f2) if f2 else k * f1 * (f1 - 1) / 2


def log_normal_interval(seen, estimate, variance):
    """Chao 1987: [S + T/K, S + T K], T = estimate - S, K = exp(z sqrt(ln(1 + var/T^2)))."""
    t = estimate - seen
    if t == 0:
        return mpf(seen), mpf(seen)
    z = Z
    k = mp.exp(z * mp.sqrt(mp.log(1 + variance / t ** 2)))
    return seen + t / k, seen + t * k


def chao(seen, f1, f2, n):
    """Chao1 or Chao2 with its variance and interval."""
    k = mpf(n - 1) / n
    estimate = seen + unseen(f1, f2, n)
    if f2:
        r = mpf(f1) / f2
        variance = f2 * (k * r ** 2 / 2 + k ** 2 * r ** 3 + k ** 2 * r ** 4 / 4)
    else:
        variance = (k * f1 * (f1 - 1) / 2 + k ** 2 * f1 * (2 * f1 - 1) ** 2 / 4
                    - k ** 2 * mpf(f1) ** 4 / (4 * estimate))
    lower, upper = log_normal_interval(seen, estimate, variance)
    return {'estimate': float(estimate), 'variance': float(variance), 'se': float(mp.sqrt(variance)),
            'lower': float(lower), 'upper': float(upper)}


def delta_interval(estimate, groups):
    """SE by the delta method over the numbers of species f_k, derivatives by numbers, and the log-normal interval.

    Variance: sum f_k d_k^2 - (sum f_k d_k)^2 / estimate (Chao & Lee 1992; Lee & Chao 1994). Where the squared CV is
    0, at the edge of being negative too, it is held there.
    """
    value = estimate(groups)
    if value is None:
        return None
    even = abs(value - estimate(groups, True)) < mpf(10) ** -30
    slopes = {k: mp.diff(lambda f, k=k: estimate({**groups, k: f}, even), mpf(s)) for k, s in groups.items() if k <= 10}
    slope = {k: slopes.get(k, mpf(1)) for k in groups}
    squares = sum(s * slope[k] ** 2 for k, s in groups.items())
    variance = max(squares - sum(s * slope[k] for k, s in groups.items()) ** 2 / value, mpf(0))
    lower, upper = log_normal_interval(sum(groups.values()), value, variance)
    return {'variance': float(variance), 'lower': float(lower), 'upper': float(upper)}


def hill(shares, order):
    """Hill number of the shares, which sum to 1."""
    shares = [p for p in shares if p > 0]
    if order == 1:
        return mp.exp(-sum(p * mp.log(p) for p in shares))
    return sum(mp.power(p, mpf(order)) for p in shares) ** (1 / (1 - mpf(order)))


def grouped(values):
    groups = {}
    for v in values:
        if v > 0:
            groups[v] = groups.get(v, 0) + 1
    return groups


def sizes_between(n):
    """A sparing choice of sizes below, at and above n, up to 2n."""
    wanted = {1, 2, n // 10, n // 3, n - 1, n, n + 1, (3 * n) // 2, 2 * n}
    return sorted(m for m in wanted if 1 <= m <= 2 * n)
