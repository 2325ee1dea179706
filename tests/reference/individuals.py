"""Diversity of counts of individuals: variants and sources in README.md."""
from mpmath import mp, mpf

import exact
from exact import chao, entropy_core, entropy_of_subsample, grouped, hill, missed, undetected_share, unseen

ORDERS = [0, 0.5, 1, 1.5, 2, 3]


class Sample:
    """Counts of one assemblage, with what the formulas need of them."""

    def __init__(self, counts):
        self.counts = [c for c in counts if c > 0]
        self.groups = grouped(counts)
        self.n = sum(self.counts)
        self.s = len(self.counts)
        self.f1 = self.groups.get(1, 0)
        self.f2 = self.groups.get(2, 0)
        self.pairs = sum(c * (c - 1) for c in self.counts)
        self.a = undetected_share(self.f1, self.f2, self.n) if self.n else None
        self.f0 = unseen(self.f1, self.f2, self.n) if self.n else None
        self._below = {}

    def why_no_coverage(self):
        if self.n == 0:
            return 'no individuals'
        if self.n == 1:
            return 'one individual'
        if self.f1 == self.n:
            return 'every individual is a singleton'
        return None

    def shares(self):
        return [mpf(c) / self.n for c in self.counts]

    def entropy(self):
        return -sum(s * mpf(x) / self.n * mp.log(mpf(x) / self.n) for x, s in self.groups.items())

    def coverage(self, m):
        """Chao & Jost 2012. m real above n, whole below; the estimator, not the sum, at m = n."""
        if m < self.n:
            if m not in self._below:
                # choose(n-x, m)/choose(n-1, m): the chance to miss x of n when one of them is set apart
                self._below[m] = 1 - sum(s * mpf(x) / self.n * missed(x - 1, self.n - 1, m)
                                         for x, s in self.groups.items())
            return self._below[m]
        if self.f1 == 0:
            return mpf(1)
        return 1 - mpf(self.f1) / self.n * (1 - self.a) ** (m - self.n + 1)

    def q0(self, m):
        if m < self.n:
            return sum(s * (1 - missed(x, self.n, m)) for x, s in self.groups.items())
        if self.f0 == 0 or m == self.n:
            return mpf(self.s)
        return self.s + self.f0 * (1 - (1 - self.f1 / (self.n * self.f0 + self.f1)) ** (m - self.n))

    def q1(self, m):
        """Above n the entropy is a mean of observed and asymptotic, weights n/m and (m-n)/m (Chao et al. 2014)."""
        if m < self.n:
            return mp.exp(entropy_of_subsample(self.groups, self.n, m, m))
        if m == self.n:
            return mp.exp(self.entropy())
        m = mpf(m)
        return mp.exp(self.n / m * self.entropy() + (m - self.n) / m * entropy_core(self.groups, self.n))

    def q2(self, m):
        if self.n < 2:
            return None
        m = mpf(m)
        return 1 / (1 / m + (m - 1) / m * mpf(self.pairs) / (mpf(self.n) * (self.n - 1)))

    def at_real_size(self, m):
        """Diversity at a real size: between whole sizes straight lines below n, the formulas above."""
        curves = [self.q0, self.q1, self.q2]
        if m >= self.n:
            return [curve(m) for curve in curves]
        low = int(mp.floor(m))
        part = m - low
        out = []
        for curve in curves:
            # a sample of no individuals holds nothing
            left = curve(low) if low else mpf(0)
            out.append(left + part * (curve(low + 1) - left) if part else left)
        return out

    def size_for(self, target):
        """The real size with that coverage: straight lines between whole sizes up to n, the formula above."""
        at_n = self.coverage(self.n)
        if target == at_n:
            return mpf(self.n)
        if target > at_n:
            if self.f1 == 0 or self.a == 1 or target >= 1:
                return None
            star = (mp.log(mpf(self.n) / self.f1) + mp.log(1 - target)) / mp.log(1 - self.a) - 1
            return self.n + star
        low, high = 0, self.n
        while high - low > 1:
            middle = (low + high) // 2
            if self.coverage(middle) <= target:
                low = middle
            else:
                high = middle
        left = self.coverage(low) if low else mpf(0)
        return low + (target - left) / (self.coverage(high) - left)


def ace(groups, even=False):
    """Chao & Lee 1992, rare up to 10. For the delta method: real numbers of species, and a CV held at 0 ('even')."""
    rare = {x: s for x, s in groups.items() if x <= 10}
    n_rare = sum(x * s for x, s in rare.items())
    s_rare, f1 = sum(rare.values()), groups.get(1, 0)
    if n_rare == 0:
        return mpf(sum(groups.values()))
    if f1 == n_rare:
        return None
    c = 1 - mpf(f1) / n_rare
    spread = sum(x * (x - 1) * s for x, s in rare.items())
    cv2 = max(s_rare / c * mpf(spread) / (n_rare * (n_rare - 1)) - 1, mpf(0))
    if even:
        cv2 = mpf(0)
    return sum(groups.values()) - s_rare + s_rare / c + f1 / c * cv2


def targets(sample):
    """Coverages to ask for: below, in the jump at n, above; none where they would coincide.

    Without doubletons coverage stands still from n - 2 to n - 1: at that very height no size is the only one.
    """
    before, here = sample.coverage(sample.n - 1), sample.coverage(sample.n)
    wanted = [before / 2, mpf(9) / 10, mpf(99) / 100]
    if here > before:
        wanted.append((before + here) / 2)
    twice = sample.coverage(2 * sample.n)
    if twice > here:
        wanted.append((here + twice) / 2)
    return [float(t) for t in wanted if abs(t - before) > mpf(10) ** -12]


def abundance(case):
    sample = Sample(case['counts'])
    n = sample.n
    why = {}
    out = {'id': case['id'], 'n': n, 's': sample.s, 'f1': sample.f1, 'f2': sample.f2}

    def put(key, value, reason):
        out[key] = None if value is None else (value if isinstance(value, (dict, list)) else float(value))
        if value is None:
            why[key] = reason

    none = 'no individuals'
    put('hill', {str(q): float(hill(sample.shares(), q)) for q in ORDERS} if n else None, none)
    put('shannon', sample.entropy() if n else None, none)
    put('giniSimpson', 1 - mpf(sum(c * c for c in sample.counts)) / (mpf(n) * n) if n else None, none)
    put('giniSimpsonUnbiased', 1 - mpf(sample.pairs) / (mpf(n) * (n - 1)) if n > 1 else None,
        none if n == 0 else 'one individual')
    put('pielou', sample.entropy() / mp.log(sample.s) if sample.s > 1 else None,
        none if n == 0 else 'one species: ln S = 0')
    put('bergerParker', mpf(max(sample.counts)) / n if n else None, none)
    put('chao1', chao(sample.s, sample.f1, sample.f2, n) if n else None, none)
    rare = none if n == 0 else 'every rare record is a singleton'
    put('ace', ace(sample.groups) if n else None, rare)
    put('aceInterval', exact.delta_interval(ace, sample.groups) if n else None, rare)
    no_coverage = sample.why_no_coverage()
    put('coverage', None if no_coverage else sample.coverage(n), no_coverage)
    put('asymptoticShannon', entropy_core(sample.groups, n) if n else None, none)
    put('asymptoticQ1', mp.exp(entropy_core(sample.groups, n)) if n else None, none)
    put('asymptoticQ2', mpf(n) * (n - 1) / sample.pairs if sample.pairs else None,
        none if n == 0 else 'one individual' if n == 1 else 'no species caught more than once: unbounded')
    if out['asymptoticQ2'] is not None:
        orders = [out['chao1']['estimate'], out['asymptoticQ1'], out['asymptoticQ2']]
        out['asymptoticCross'] = any(b > a * (1 + 1e-9) for a, b in zip(orders, orders[1:]))
    out['curve'] = [[m, None if no_coverage else float(sample.coverage(m)), float(sample.q0(m)), float(sample.q1(m)),
                     None if n < 2 else float(sample.q2(m))] for m in exact.sizes_between(n)] if n else []
    out['sizeForCoverage'] = [] if no_coverage else [
        [t, None if size is None else float(size)]
        for t, size in ((t, sample.size_for(mpf(t))) for t in targets(sample))]
    if why:
        out['why'] = why
    return out


def equal_coverage(case, by_id):
    """Common coverage: the smallest of the members' coverages at doubled size (Chao et al. 2014)."""
    rows, kept = [], []
    for member in case['members']:
        sample = Sample(by_id[member])
        why = sample.why_no_coverage()
        if not why and sample.coverage(sample.n) < mpf(1) / 2:
            why = 'coverage below 0.5'
        if why:
            rows.append({'id': member, 'leftOut': why})
        else:
            kept.append((len(rows), sample))
            rows.append({'id': member, 'coverageAtN': float(sample.coverage(sample.n)),
                         'coverageAtTwiceN': float(sample.coverage(2 * sample.n))})
    if len(kept) < 2:
        return {'id': case['id'], 'coverage': None, 'members': rows, 'why': {'coverage': 'fewer than two to compare'}}
    target = min(sample.coverage(2 * sample.n) for _, sample in kept)
    for place, sample in kept:
        size = sample.size_for(target)
        q0, q1, q2 = sample.at_real_size(size)
        rows[place] |= {'size': float(size), 'q0': float(q0), 'q1': float(q1), 'q2': float(q2)}
    return {'id': case['id'], 'coverage': float(target), 'members': rows}
