"""Diversity of incidences over sampling units (Colwell et al. 2012, Chao et al. 2014)."""
from mpmath import mp, mpf

import exact
from exact import chao, entropy_core, entropy_of_subsample, grouped, hill, missed, undetected_share, unseen
from individuals import ORDERS


class Units:
    def __init__(self, units, frequencies):
        self.t = units
        self.y = [v for v in frequencies if v > 0]
        self.groups = grouped(frequencies)
        self.u = sum(self.y)
        self.s = len(self.y)
        self.q1s = self.groups.get(1, 0)
        self.q2s = self.groups.get(2, 0)
        self.pairs = sum(v * (v - 1) for v in self.y)
        self.a = undetected_share(self.q1s, self.q2s, units)
        self.unseen = unseen(self.q1s, self.q2s, units)

    def why_no_coverage(self):
        if self.u == 0:
            return 'no incidences'
        if self.t == 1:
            return 'one sampling unit'
        if self.q1s == self.u:
            return 'every incidence is a unique'
        return None

    def entropy(self):
        return -sum(s * mpf(y) / self.u * mp.log(mpf(y) / self.u) for y, s in self.groups.items())

    def asymptotic_entropy(self):
        return mpf(self.t) / self.u * entropy_core(self.groups, self.t) + mp.log(mpf(self.u) / self.t)

    def coverage(self, m):
        if m < self.t:
            return 1 - sum(s * mpf(y) / self.u * missed(y - 1, self.t - 1, m) for y, s in self.groups.items())
        if self.q1s == 0:
            return mpf(1)
        return 1 - mpf(self.q1s) / self.u * (1 - self.a) ** (m - self.t + 1)

    def q0(self, m):
        if m < self.t:
            return sum(s * (1 - missed(y, self.t, m)) for y, s in self.groups.items())
        if self.unseen == 0 or m == self.t:
            return mpf(self.s)
        return self.s + self.unseen * (1 - (1 - self.q1s / (self.t * self.unseen + self.q1s)) ** (m - self.t))

    def q1(self, m):
        if m < self.t:
            scale = exact.LONG(m) * self.u / self.t
            return mp.exp(entropy_of_subsample(self.groups, self.t, m, scale))
        if m == self.t:
            return mp.exp(self.entropy())
        m = mpf(m)
        return mp.exp(self.t / m * self.entropy() + (m - self.t) / m * self.asymptotic_entropy())

    def q2(self, m):
        if self.t < 2:
            return None
        m = mpf(m)
        square = mpf(self.u) ** 2 * (1 - mpf(1) / self.t)
        return 1 / (self.t / (m * self.u) + (m - 1) / m * self.pairs / square)


def ice(groups, holding_infrequent, falling=False, even=False):
    """Lee & Chao 1994, infrequent up to 10 units; m is the number of units that hold an infrequent species.

    The denominator of the squared CV is N^2 ('falling': N (N - 1), a form also found in print).
    """
    infrequent = {y: s for y, s in groups.items() if y <= 10}
    n = sum(y * s for y, s in infrequent.items())
    s_infrequent, uniques = sum(infrequent.values()), groups.get(1, 0)
    if n == 0:
        return mpf(sum(groups.values()))
    if uniques == n:
        return None
    c = 1 - mpf(uniques) / n
    m = mpf(holding_infrequent)
    spread = sum(y * (y - 1) * s for y, s in infrequent.items())
    cv2 = max(s_infrequent / c * m / (m - 1) * spread / (n * (n - 1) if falling else n * n) - 1, mpf(0))
    if even:
        cv2 = mpf(0)
    return sum(groups.values()) - s_infrequent + s_infrequent / c + uniques / c * cv2


def jackknife_interval(units, order):
    """Burnham & Overton 1978: variance sum a_k^2 Q_k - estimate, a_k the weight of Q_k; never below S."""
    t = units.t
    weights = {1: 1 + mpf(t - 1) / t} if order == 1 else \
        {1: 1 + mpf(2 * t - 3) / t, 2: 1 - mpf(t - 2) ** 2 / (t * (t - 1))}
    value = sum(weights.get(k, 1) * s for k, s in units.groups.items())
    variance = max(sum(weights.get(k, 1) ** 2 * s for k, s in units.groups.items()) - value, mpf(0))
    half = exact.Z * mp.sqrt(variance)
    return {'variance': float(variance), 'lower': float(max(value - half, min(value, units.s))), 'upper': float(value + half)}


def incidence(case):
    rows = case['species']
    frequencies = [row.count('1') for row in rows]
    units = Units(case['units'], frequencies)
    t, s = units.t, units.s
    holding = sum(any(row[j] == '1' for row, y in zip(rows, frequencies) if y <= 10) for j in range(t))
    why = {}
    out = {'id': case['id'], 'units': t, 'frequencies': frequencies, 'incidences': units.u, 's': s,
           'uniques': units.q1s, 'duplicates': units.q2s, 'unitsHoldingInfrequent': holding}

    def put(key, value, reason):
        out[key] = None if value is None else (value if isinstance(value, (dict, list)) else float(value))
        if value is None:
            why[key] = reason

    none = 'no incidences'
    some = units.u > 0
    put('hill', {str(q): float(hill([mpf(y) / units.u for y in units.y], q)) for q in ORDERS} if some else None, none)
    put('chao2', chao(s, units.q1s, units.q2s, t) if some else None, none)
    reason = 'every infrequent record is a unique' if some else none
    put('ice', ice(units.groups, holding) if some else None, reason)
    put('iceFalling', ice(units.groups, holding, True) if some else None, reason)
    put('iceInterval', exact.delta_interval(lambda g, even=False: ice(g, holding, even=even), units.groups) if some else None, reason)
    # Burnham & Overton 1978, 1979
    put('jackknife1', s + units.q1s * mpf(t - 1) / t if some and t > 1 else None, 'one sampling unit' if some else none)
    put('jackknife2', s + units.q1s * mpf(2 * t - 3) / t - units.q2s * mpf(t - 2) ** 2 / (t * (t - 1))
        if some and t > 1 else None, 'one sampling unit' if some else none)
    for order in (1, 2):
        put(f'jackknife{order}Interval', jackknife_interval(units, order) if some and t > 1 else None,
            'one sampling unit' if some else none)
    no_coverage = units.why_no_coverage()
    put('coverage', None if no_coverage else units.coverage(t), no_coverage)
    put('asymptoticShannon', units.asymptotic_entropy() if some else None, none)
    put('asymptoticQ1', mp.exp(units.asymptotic_entropy()) if some else None, none)
    put('asymptoticQ2', mpf(units.u) ** 2 * (1 - mpf(1) / t) / units.pairs if units.pairs else None,
        none if not some else 'one sampling unit' if t == 1 else 'no species in more than one unit: unbounded')
    out['curve'] = [[m, None if no_coverage else float(units.coverage(m)), float(units.q0(m)), float(units.q1(m)),
                     None if t < 2 else float(units.q2(m))] for m in exact.sizes_between(t)] if some else []
    if why:
        out['why'] = why
    return out
