#!/usr/bin/python3
"""Checks of this implementation against itself by other roads: exact fractions, brute force, eigenvectors."""
import itertools
import json
import math
import os
from fractions import Fraction

import numpy as np
from mpmath import mp, mpf
from scipy import stats

import designs
import exact
import layouts
from individuals import Sample
from units import Units

HERE = os.path.dirname(os.path.abspath(__file__))
CASES = json.load(open(os.path.join(HERE, 'cases.json')))


def near(a, b, tolerance=1e-12):
    assert abs(a - b) <= tolerance * max(1, abs(b)), (a, b)


def choose(n, k):
    return math.comb(n, k) if 0 <= k <= n else 0


def check_subsamples():
    """q 0, 1, 2 and coverage below n with exact binomials."""
    done = 0
    for case in CASES['abundance']:
        s = Sample(case['counts'])
        if not 3 <= s.n <= 200:
            continue
        for m in {1, 2, s.n // 2, s.n - 1}:
            near(s.q0(m), sum(1 - Fraction(choose(s.n - x, m), choose(s.n, m)) for x in s.counts))
            near(s.coverage(m), 1 - sum(Fraction(x, s.n) * Fraction(choose(s.n - x, m), choose(s.n - 1, m)) for x in s.counts))
            f = [sum(Fraction(choose(x, k) * choose(s.n - x, m - k), choose(s.n, m)) for x in s.counts) for k in range(m + 1)]
            near(s.q1(m), math.exp(-sum(k / m * math.log(k / m) * float(f[k]) for k in range(1, m + 1))))
            near(s.q2(m), 1 / sum(Fraction(k, m) ** 2 * f[k] for k in range(1, m + 1)))
            done += 1
        near(s.q0(2), 2 - Fraction(s.pairs, s.n * (s.n - 1)))
    return done


def check_units():
    """The same over sampling units, by going through every subset of units."""
    done = 0
    for case in CASES['incidence']:
        t, rows = case['units'], [r for r in case['species'] if '1' in r]
        if not rows or not 3 <= t <= 12:
            continue
        u = Units(t, [r.count('1') for r in rows])
        m = t // 2
        subsets = list(itertools.combinations(range(t), m))
        near(u.q0(m), sum(sum(any(r[j] == '1' for j in c) for r in rows) for c in subsets) / len(subsets))
        scale = m * u.u / t
        q = [sum(sum(r[j] == '1' for j in c) == k for c in subsets for r in rows) / len(subsets) for k in range(m + 1)]
        near(u.q1(m), math.exp(-sum(k / scale * math.log(k / scale) * q[k] for k in range(1, m + 1))))
        # order 2 at T units is the observed Hill number, and at one unit the mean number of species
        near(u.q2(t), u.u ** 2 / sum(y * y for y in u.y))
        near(u.q2(1), u.u / t)
        done += 1
    return done


def check_tails():
    """The integral for the tail against Gauss's function and against the textbook difference in 400 digits."""
    done = 0
    for f1, f2, n in [(12, 4, 168), (3, 0, 20), (2, 9, 40), (1, 1, 1000), (40, 40, 500), (5, 0, 6000)]:
        z = 1 - exact.undetected_share(f1, f2, n)
        closed = z / n * mp.hyp2f1(1, n, n + 1, z)
        with mp.workdps(400):
            difference = z ** (1 - n) * (-mp.log(1 - z) - mp.fsum(z ** r / r for r in range(1, n)))
        near(exact.tail_series(f1, f2, n), difference, 1e-20)
        near(closed, difference, 1e-20)
        done += 1
    return done


def check_dispersion():
    """Distances to centroids from the principal coordinates themselves, positive axes minus negative axes."""
    done = 0
    for case in CASES['designs']:
        rows = 100 * np.array(case['counts']) / np.array(case['nights'])[:, None]
        d = designs.dissimilarities(rows)
        if d is None:
            continue
        n = len(d)
        centre = np.eye(n) - 1 / n
        values, vectors = np.linalg.eigh(centre @ (-d ** 2 / 2) @ centre)
        axes, sign = vectors * np.sqrt(np.abs(values)), np.sign(values)
        habitat = np.array(case['habitat'])
        z = np.zeros(n)
        for g in set(habitat):
            at = habitat == g
            z[at] = np.sqrt(np.maximum(((axes[at] - axes[at].mean(axis=0)) ** 2 * sign).sum(axis=1), 0))
        assert np.allclose(z, designs.dispersion(d, case['habitat'])['distances'], atol=2e-8)
        f = designs.dispersion(d, case['habitat'])['f']
        if f is not None:
            near(f, stats.f_oneway(*[z[habitat == g] for g in sorted(set(habitat))]).statistic, 1e-6)
        done += 1
    return done


def check_layouts():
    """Enumeration against all orders of the sites."""
    for habitat, block in (([0, 0, 1, 1, 1], None), ([0, 0, 1, 1, 2, 2], [0, 1, 0, 1, 0, 1]), ([0, 0, 0, 1, 1, 1], [0, 1, 2] * 2)):
        seen = set()
        for order in itertools.permutations(range(len(habitat))):
            if block is None or all(block[i] == block[j] for i, j in enumerate(order)):
                seen.add(tuple(habitat[j] for j in order))
        made = {tuple(int(v) for v in row) for row in layouts.all_assignments(habitat, block)}
        assert made == seen and len(made) == layouts.number_of(habitat, block)
    near(layouts.floor([0, 0, 0, 1, 1, 1], None), 0.1)
    return 3


def check_invariants():
    done = 0
    for case in CASES['abundance']:
        s, doubled = Sample(case['counts']), Sample(case['counts'] * 2)
        if s.n == 0:
            continue
        for q in (0, 0.5, 1, 2):
            near(exact.hill(doubled.shares(), q), 2 * exact.hill(s.shares(), q), 1e-20)
        hills = [exact.hill(s.shares(), q) for q in (0, 0.5, 1, 1.5, 2, 3)]
        assert all(a >= b - mpf(10) ** -30 for a, b in zip(hills, hills[1:]))
        near(s.q0(1), 1)
        done += 1
    zero_one = [[1, 0, 1, 1, 0], [0, 1, 1, 0, 0]]
    near(designs.bray_curtis(*zero_one), designs.baselga_multi(zero_one)['sorensen'])
    perfect = next(c for c in CASES['designs'] if c['id'] == 'perfect-indicator')
    near(designs.indicator_values(perfect['counts'], perfect['habitat'], None)[0][3], 100)
    near(designs.garwood(10)[0], stats.gamma.ppf(0.025, 10))
    return done


if __name__ == '__main__':
    for check in (check_subsamples, check_units, check_tails, check_dispersion, check_layouts, check_invariants):
        print(f'{check.__name__}: {check()} cases')
