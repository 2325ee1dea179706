#!/usr/bin/python3
"""Writes cases.json: the inputs of the second implementation (see README.md).

The stream is numpy's legacy RandomState (MT19937), whose output numpy promises not to change, so the
file can be made again anywhere. Everything here is invented except the cases marked 'published'.
"""
import json
import sys

import numpy as np

SEED = 20240617


def ints(values):
    return [int(v) for v in values]


# ---------------------------------------------------------------- abundance assemblages

PUBLISHED_ABUNDANCE = {
    # Chao et al. 2014, Ecological Monographs 84:45-67: spiders in pitfall traps, hemlock forest (from memory).
    'hemlock-girdled': [46, 22, 17, 15, 15, 9, 8, 6, 6, 4] + [2] * 4 + [1] * 12,
    'hemlock-logged': [88, 22, 16, 15, 13, 10, 8, 8, 7, 7, 7, 5] + [4] * 3 + [3] * 4 + [2] * 4 + [1] * 14,
}

EDGES = [
    ('empty', []), ('empty-zeros', [0, 0, 0]), ('one-individual', [1]), ('one-individual-zeros', [0, 1, 0]),
    ('one-species-2', [2]), ('one-species-50', [50]), ('one-species-million', [1000000]),
    ('two-singletons', [1, 1]), ('all-singletons-3', [1] * 3), ('all-singletons-10', [1] * 10),
    ('all-singletons-40', [1] * 40), ('two-species-1-2', [1, 2]), ('two-species-1-99', [1, 99]),
    ('two-species-50-50', [50, 50]), ('two-species-2-2', [2, 2]), ('two-species-1-999999', [1, 999999]),
    ('no-singletons', [2, 3, 4, 5, 9, 20]), ('no-singletons-many-doubletons', [2] * 12 + [7, 30]),
    ('no-singletons-no-doubletons', [3, 3, 5, 8, 13, 40]), ('no-doubletons', [1, 1, 1, 1, 5, 9, 30]),
    ('no-doubletons-large', [1] * 25 + [3, 4, 8, 120, 900, 5000]), ('one-singleton-no-doubleton', [1, 4, 9, 30]),
    ('one-singleton-no-doubleton-large', [1, 3, 800, 99000]), ('one-singleton-one-doubleton', [1, 2, 6, 15]),
    ('two-singletons-no-doubleton', [1, 1, 4, 9]), ('one-doubleton-many-singletons', [1] * 30 + [2]),
    ('one-doubleton-rest-large', [2, 400, 600]), ('rare-all-singletons', [1, 1, 1, 11, 12, 50]),
    ('rare-none', [11, 12, 30, 700]), ('cut-at-ten', [10, 10, 1, 2, 11]), ('cut-at-eleven', [11, 11, 1, 2, 10]),
    ('even-1', [25]), ('even-2', [25, 25]), ('even-3', [25, 25, 25]), ('even-4', [25, 25, 25, 25]),
    ('even-100x2', [2] * 100), ('even-50x1000', [1000] * 50), ('twins-a', [7, 3, 1, 1]),
    ('twins-b', [7, 7, 3, 3, 1, 1, 1, 1]), ('one-giant-many-singletons', [999900] + [1] * 100),
    ('one-giant-singletons-doubletons', [999000] + [1] * 60 + [2] * 20 + [5] * 40),
    ('zeros-inside', [0, 5, 0, 1, 2, 0, 1, 9]),
]


def random_assemblages(rng):
    sizes = [8, 12, 20, 30, 50, 80, 120, 200, 350, 600, 1000, 2000, 4000, 8000]
    out = []

    def add(kind, counts):
        counts = ints(counts)
        rng.shuffle(counts)
        out.append({'id': f'{kind}-{sum(c["kind"] == kind for c in out) + 1:02d}', 'kind': kind, 'counts': counts})

    for repeat in range(3):
        for n in [[3, 5], [15, 40], [25, 70]][repeat] + sizes + [[20000, 60000, 250000, 1000000], [], []][repeat]:
            alpha = [3, 8, 20][repeat]
            drawn = max(1, int(round(alpha * np.log1p(n / alpha))))
            add('log-series', rng.logseries(n / (n + alpha), size=drawn))
            p = np.exp(rng.normal(0, [1, 1.8, 2.6][repeat], size=[25, 60, 110][repeat]))
            counts = rng.multinomial(n, p / p.sum())
            # every third keeps the species never caught, as zeros
            add('log-normal', counts if len(out) % 3 == 0 else counts[counts > 0])
            p = (1 - [0.08, 0.2, 0.4][repeat]) ** np.arange([60, 40, 20][repeat])
            counts = rng.multinomial(n, p / p.sum())
            add('geometric', counts[counts > 0])
            if repeat < 2:
                k = [6, 40][repeat]
                counts = rng.multinomial(n, np.full(k, 1 / k))
                add('even', counts[counts > 0])
    for n in [20000, 60000, 150000, 400000, 1000000]:
        p = np.exp(rng.normal(0, 4.5, size=220))
        counts = rng.multinomial(n, p / p.sum())
        add('many-species', counts[counts > 0])
        add('many-species', rng.logseries(n / (n + 25), size=int(round(25 * np.log1p(n / 25)))))
    return out


def abundance_cases(rng):
    out = [{'id': k, 'kind': 'published', 'counts': v} for k, v in PUBLISHED_ABUNDANCE.items()]
    out += [{'id': k, 'kind': 'edge', 'counts': v} for k, v in EDGES]
    return out + random_assemblages(rng)


# ---------------------------------------------------------------- incidence sets

def matrix_rows(matrix):
    return [''.join('1' if v else '0' for v in row) for row in matrix]


def incidence_cases(rng):
    def edge(name, units, rows):
        return {'id': name, 'kind': 'edge', 'units': units, 'species': rows}

    out = [
        edge('no-species', 5, []), edge('one-unit', 1, ['1', '1', '1']), edge('one-unit-one-species', 1, ['1']),
        edge('two-units', 2, ['10', '11', '01']), edge('two-units-all-shared', 2, ['11', '11']),
        edge('all-uniques', 5, ['10000', '01000', '00100', '00001']),
        edge('all-uniques-one-unit', 4, ['0100', '0100', '0100']),
        edge('no-uniques', 6, ['110000', '011100', '111111', '000011']),
        edge('no-duplicates', 6, ['100000', '010000', '111000', '111111', '000001']),
        edge('one-unique-no-duplicate', 6, ['100000', '111000', '111111']),
        edge('every-unit', 8, ['11111111'] * 4), edge('one-species-every-unit', 8, ['11111111']),
        edge('zeros-inside', 5, ['00000', '10100', '00000', '01000', '11110']),
        edge('infrequent-all-uniques', 15, ['1' * 15, '1' * 12 + '000', '1' + '0' * 14, '0' * 14 + '1']),
        edge('infrequent-none', 15, ['1' * 15, '1' * 12 + '000', '0' * 3 + '1' * 12]),
        edge('empty-units', 8, ['11000000', '10000000', '01100000', '01000000']),
    ]
    for index in range(48):
        units = [3, 4, 6, 8, 12, 16, 24, 40, 60, 90][index % 10]
        species = int(rng.randint(6, 45))
        shape = [(0.3, 1.5), (0.15, 2.0), (0.6, 1.0), (1.0, 6.0)][index % 4]
        chance = rng.beta(shape[0], shape[1], size=species)
        matrix = rng.random_sample((species, units)) < chance[:, None]
        if index % 5:
            matrix = matrix[matrix.any(axis=1)]
        out.append({'id': f'random-{index + 1:02d}', 'kind': 'random', 'units': units, 'species': matrix_rows(matrix)})
    return out


# ---------------------------------------------------------------- designs

def design(rng, name, kind, per_habitat, species, theta, effect, blocks=None, empty_habitat=None, whole=True):
    habitat = [h for h, k in enumerate(per_habitat) for _ in range(k)]
    sites = len(habitat)
    nights = rng.randint(120, 900, size=sites).astype(float)
    if not whole:
        nights = nights + rng.randint(0, 8, size=sites) / 8
    base = np.exp(rng.normal(-1.2, 1.3, size=species))
    shift = np.exp(rng.normal(0, effect, size=(len(per_habitat), species)))
    mean = base[None, :] * shift[habitat] * nights[:, None] / 100
    if theta is None:
        counts = rng.poisson(mean)
    else:
        counts = rng.poisson(mean * rng.gamma(theta, 1 / theta, size=mean.shape))
        # a factor common to the whole site makes the totals clumped as well
        counts = rng.poisson(counts * rng.gamma(4, 1 / 4, size=sites)[:, None])
    if empty_habitat is not None:
        counts[np.array(habitat) == empty_habitat] = 0
    block = None
    if blocks:
        block = []
        for k in per_habitat:
            block += [i % blocks for i in range(k)]
    return {'id': name, 'kind': kind, 'habitat': habitat, 'block': block, 'nights': [float(v) for v in nights],
            'counts': [ints(row) for row in counts]}


def design_cases(rng):
    layouts = [[2, 2], [3, 3], [4, 4], [5, 5], [6, 6], [2, 3], [3, 5], [2, 6], [4, 6], [2, 2, 2], [3, 3, 3],
               [2, 3, 4], [4, 4, 4], [6, 6, 6], [2, 2, 2, 2], [3, 3, 3, 3], [2, 3, 2, 3], [6, 6, 6, 6]]
    out = []
    for index in range(36):
        layout = layouts[index % len(layouts)]
        out.append(design(rng, f'clumped-{index + 1:02d}', 'clumped', layout, int(rng.randint(8, 20)),
                          [0.4, 0.8, 1.5, 4.0][index % 4], [0.0, 0.4, 1.0][index % 3], whole=index % 4 != 3))
    for index in range(12):
        layout = [[3, 3], [4, 4], [2, 2, 2], [3, 3, 3], [4, 4, 4], [2, 2, 2, 2]][index % 6]
        out.append(design(rng, f'blocked-{index + 1:02d}', 'blocked', layout, int(rng.randint(8, 16)),
                          [0.6, 1.5][index % 2], [0.0, 0.8][index % 2], blocks=[layout[0], 2][index // 6]))
    for index in range(6):
        out.append(design(rng, f'poisson-{index + 1}', 'poisson', [[3, 3], [4, 4], [3, 3, 3]][index % 3], 10, None, 0.5))
    for index in range(2):
        out.append(design(rng, f'separated-{index + 1}', 'separated', [[3, 3], [2, 2, 2]][index], 8, 1.0, 0.5,
                          empty_habitat=1))
    flat = design(rng, 'underdispersed-1', 'underdispersed', [3, 3], 4, None, 0.2)
    # the same total in proportion to effort everywhere: far less spread than Poisson
    flat['nights'] = [200.0, 400.0, 300.0, 200.0, 400.0, 300.0]
    flat['counts'] = [[int(n // 10), int(n // 20), int(n // 50), 3 + i % 2] for i, n in enumerate(flat['nights'])]
    out.append(flat)
    empty_site = design(rng, 'one-empty-site', 'edge', [3, 3], 8, 1.5, 0.5)
    empty_site['counts'][1] = [0] * 8
    out.append(empty_site)
    # one site in a habitat: composition and rates only; the model has no spread within that habitat
    out.append(design(rng, 'single-site', 'edge', [1, 4], 10, 1.0, 0.5))
    # one site holds what its neighbours hold apart: its squared distance to the centroid is negative
    negative = design(rng, 'negative-square', 'edge', [5, 5], 6, 1.5, 0.3)
    negative['nights'] = [100.0] * 10
    negative['counts'][:5] = [[10, 0, 0, 0, 0, 1], [0, 11, 0, 0, 0, 0], [0, 0, 9, 0, 0, 0], [0, 0, 0, 10, 0, 0],
                              [10, 10, 10, 10, 0, 0]]
    out.append(negative)
    perfect = design(rng, 'perfect-indicator', 'edge', [3, 3], 6, 1.5, 0.3)
    for site, row in enumerate(perfect['counts']):
        row[0] = 3 + site if site < 3 else 0
        row[1] = 0
    out.append(perfect)
    return out


# ---------------------------------------------------------------- small things

def pair_cases(rng):
    out = [
        {'id': 'tanks', 'a': [6, 7, 4], 'b': [10, 0, 6]},
        {'id': 'shared-4-1-6', 'a': [1] * 5 + [0] * 6, 'b': [1] * 4 + [0] + [1] * 6},
        {'id': 'both-empty', 'a': [0, 0], 'b': [0, 0]}, {'id': 'one-empty', 'a': [3, 1], 'b': [0, 0]},
        {'id': 'identical', 'a': [4, 2, 0, 9], 'b': [4, 2, 0, 9]}, {'id': 'nothing-shared', 'a': [4, 0], 'b': [0, 3]},
        {'id': 'nested', 'a': [4, 2, 7, 1, 3], 'b': [4, 0, 2, 0, 0]},
        {'id': 'rates', 'a': [1.25, 0.0, 3.5, 0.125], 'b': [0.75, 2.0, 3.5, 0.0]},
    ]
    for index in range(32):
        species = int(rng.randint(2, 30))
        scale = [1.0, 5.0, 60.0, 3000.0][index % 4]
        a, b = (rng.poisson(scale * rng.gamma(0.4, 1, size=species)) for _ in range(2))
        out.append({'id': f'random-{index + 1:02d}', 'a': ints(a), 'b': ints(b)})
    return out


def rate_cases(rng):
    out = [
        {'id': 'one-unit', 'catch': [17], 'nights': [120.0]}, {'id': 'one-unit-no-catch', 'catch': [0], 'nights': [84.0]},
        {'id': 'no-catch', 'catch': [0, 0, 0], 'nights': [84.0, 70.0, 84.0]},
        {'id': 'no-spread', 'catch': [10, 20, 30], 'nights': [100.0, 200.0, 300.0]},
        {'id': 'villa-castillo-wagner', 'catch': [919], 'nights': [6400.0]},
        {'id': 'bergmann', 'catch': [583], 'nights': [420.0]}, {'id': 'lobo', 'catch': [1537], 'nights': [300.0]},
        {'id': 'two-units', 'catch': [12, 31], 'nights': [140.0, 126.5]},
        {'id': 'one-zero', 'catch': [0, 9, 4], 'nights': [84.0, 70.25, 84.0]},
    ]
    for index in range(15):
        units = int(rng.randint(2, 9))
        nights = rng.randint(40, 500, size=units) + rng.randint(0, 4, size=units) / 4
        catch = rng.poisson(nights * 0.2 * rng.gamma(1.5, 1 / 1.5, size=units))
        out.append({'id': f'random-{index + 1:02d}', 'catch': ints(catch), 'nights': [float(v) for v in nights]})
    return out


def kruskal_cases(rng):
    out = [
        {'id': 'all-ties', 'groups': [[2, 2, 2], [2, 2]]}, {'id': 'no-ties', 'groups': [[1, 2, 3], [4, 5, 6]]},
        {'id': 'many-ties', 'groups': [[0, 0, 1, 1], [0, 1, 1, 2], [2, 2, 3, 0]]},
        {'id': 'single-values', 'groups': [[1.5], [2.5], [3.5, 0.5]]},
    ]
    for index in range(12):
        groups = [ints(rng.poisson(3 + g, size=rng.randint(2, 9))) for g in range(rng.randint(2, 5))]
        out.append({'id': f'random-{index + 1:02d}', 'groups': groups})
    return out


def holm_cases(rng):
    out = [
        {'id': 'none', 'p': []}, {'id': 'one', 'p': [0.03]}, {'id': 'ties', 'p': [0.01, 0.01, 0.01, 0.2]},
        {'id': 'capped', 'p': [0.5, 0.6, 0.9]}, {'id': 'monotone', 'p': [0.01, 0.013, 0.014, 0.19]},
        {'id': 'zero-and-one', 'p': [0.0, 1.0, 0.05]},
    ]
    for index in range(8):
        p = np.round(rng.random_sample(rng.randint(2, 25)) ** 3, 5)
        out.append({'id': f'random-{index + 1}', 'p': [float(v) for v in p]})
    return out


def coverage(counts, doubled=False):
    x = np.array([c for c in counts if c])
    n, f1, f2 = x.sum(), (x == 1).sum(), (x == 2).sum()
    if n < 2 or f1 == n:
        return None
    if f1 == 0:
        return 1.0
    a = 2 * f2 / ((n - 1) * f1 + 2 * f2) if f2 else 2 / ((n - 1) * (f1 - 1) + 2)
    return 1 - f1 / n * (1 - a) ** (n + 1 if doubled else 1)


def equal_coverage_cases(rng, abundance):
    usable = [c for c in abundance if c['kind'] != 'edge' and sum(c['counts']) <= 70000
              and (coverage(c['counts'], True) or 0) < 1]
    by_id = {c['id']: c['counts'] for c in abundance}
    out = [['hemlock-girdled', 'hemlock-logged'],
           ['hemlock-girdled', 'no-singletons', 'hemlock-logged'],
           ['hemlock-girdled', 'all-singletons-10', 'hemlock-logged'],
           ['one-doubleton-many-singletons', 'hemlock-girdled', 'hemlock-logged'],
           ['hemlock-girdled', 'one-singleton-no-doubleton']]
    while len(out) < 17:
        members = [usable[i]['id'] for i in rng.choice(len(usable), size=rng.randint(2, 5), replace=False)]
        out.append(sorted(members))
    # sets whose common coverage falls into the jump of a member between n - 1 and n
    while len(out) < 22:
        members = sorted(usable[i]['id'] for i in rng.choice(len(usable), size=2, replace=False))
        cover = [coverage(by_id[m], True) for m in members]
        here = [coverage(by_id[m]) for m in members]
        if None in cover or min(here) < 0.5 or members in out:
            continue
        other = by_id[members[int(np.argmax(cover))]]
        n, f1 = sum(other), sum(c == 1 for c in other)
        if 1 - f1 / n + 1e-6 < min(cover) < coverage(other) - 1e-6:
            out.append(members)
    return [{'id': f'set-{i + 1:02d}', 'members': m} for i, m in enumerate(out)]


def share_cases(rng):
    out = [
        {'id': 'one-unit', 'part': [3], 'whole': [10]}, {'id': 'none', 'part': [0, 0], 'whole': [7, 3]},
        {'id': 'all', 'part': [7, 3], 'whole': [7, 3]}, {'id': 'no-animals', 'part': [0, 0], 'whole': [0, 0]},
        {'id': 'one-unit-with-animals', 'part': [0, 4, 0], 'whole': [0, 9, 0]},
        {'id': 'alike', 'part': [1, 2], 'whole': [2, 4]}, {'id': 'two-apart', 'part': [9, 1], 'whole': [10, 10]},
        {'id': 'large', 'part': [40000, 61000], 'whole': [90000, 110000]},
    ]
    for index in range(32):
        units = int(rng.randint(1, 9))
        whole = rng.poisson([3.0, 40.0, 900.0][index % 3] * rng.gamma(1.5, 1 / 1.5, size=units))
        part = rng.binomial(whole, rng.beta(2, [2, 12][index % 2], size=units))
        out.append({'id': f'random-{index + 1:02d}', 'part': ints(part), 'whole': ints(whole)})
    return out


def precision_cases(rng):
    out = [{'id': 'one-unit', 'rate': 0.2, 'theta': 3.0, 'units': 1, 'effort': 300.0, 'halfWidth': 0.3},
           {'id': 'too-clumped', 'rate': 0.5, 'theta': 1.0, 'units': 4, 'effort': 400.0, 'halfWidth': 0.3}]
    for index in range(28):
        theta = None if index % 4 == 0 else float(np.round(rng.gamma(2, 8), 3) + 0.2)
        out.append({'id': f'random-{index + 1:02d}', 'rate': float(np.round(rng.gamma(1, 0.4), 4) + 0.01), 'theta': theta,
                    'units': int(rng.randint(2, 10)), 'effort': float(rng.randint(100, 4000)),
                    'halfWidth': [0.2, 0.3, 0.5, 0.8][index % 4 if index < 16 else (index // 4) % 4]})
    return out


def detection_cases(rng):
    out = []
    for name, sizes, theta, mean, blocks in [
            ('two-by-three', [3, 3], 5.0, 60, None), ('two-by-four', [4, 4], 8.0, 20, None),
            ('two-by-six', [6, 6], 4.0, 150, None), ('three-by-three', [3, 3, 3], 10.0, 40, None),
            ('three-and-six', [3, 6], 3.0, 90, None), ('poisson', [4, 4], None, 15, None),
            ('few-animals', [5, 5], 2.0, 4, None), ('blocked', [4, 4, 4], 20.0, 80, 4),
            ('blocked-pairs', [3, 3], 20.0, 80, 3), ('blocked-six', [6, 6], 6.0, 50, 6)]:
        habitat = [h for h, k in enumerate(sizes) for _ in range(k)]
        block = [i % blocks for k in sizes for i in range(k)] if blocks else None
        expected = [float(np.round(mean * rng.uniform(0.7, 1.3), 3)) for _ in habitat]
        out.append({'id': name, 'expected': expected, 'habitat': habitat, 'block': block, 'theta': theta,
                    'raised': len(sizes) - 1})
    return out


def main(path):
    streams = {name: np.random.RandomState(SEED + i) for i, name in enumerate(
        ['abundance', 'incidence', 'designs', 'pairs', 'rates', 'kruskal', 'holm', 'equal', 'shares',
         'precision', 'detection'])}
    abundance = abundance_cases(streams['abundance'])
    cases = {
        'abundance': abundance,
        'incidence': incidence_cases(streams['incidence']),
        'designs': design_cases(streams['designs']),
        'pairs': pair_cases(streams['pairs']),
        'rates': rate_cases(streams['rates']),
        'kruskalWallis': kruskal_cases(streams['kruskal']),
        'holm': holm_cases(streams['holm']),
        'shares': share_cases(streams['shares']),
        'precision': precision_cases(streams['precision']),
        'detection': detection_cases(streams['detection']),
        'equalCoverage': equal_coverage_cases(streams['equal'], abundance),
        'bootstrap': [{'id': i, 'of': 'abundance'} for i in
                      ['hemlock-girdled', 'hemlock-logged', 'no-singletons', 'no-doubletons', 'two-species-1-99',
                       'log-series-08', 'log-series-14', 'log-series-30', 'log-normal-10', 'log-normal-33',
                       'geometric-12', 'even-09', 'log-normal-50']]
                     + [{'id': i, 'of': 'incidence'} for i in
                        ['random-04', 'random-17', 'random-16', 'random-29', 'no-uniques']],
    }
    with open(path, 'w') as out:
        out.write('{"seed": %d' % SEED)
        for key, rows in cases.items():
            out.write(',\n"%s": [\n' % key + ',\n'.join(json.dumps(r, separators=(',', ':')) for r in rows) + '\n]')
        out.write('\n}\n')


if __name__ == '__main__':
    main(sys.argv[1] if len(sys.argv) > 1 else 'cases.json')
