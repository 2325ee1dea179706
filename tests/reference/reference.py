#!/usr/bin/python3
"""Computes reference.json from cases.json: reference.py [cases.json [reference.json]]. See README.md."""
import json
import math
import os
import platform
import subprocess
import sys
import tempfile

import numpy as np
import scipy
import statsmodels
import mpmath

import designs
import individuals
import planning
import published
import resampling
import shares
import spots
import units

HERE = os.path.dirname(os.path.abspath(__file__))
SEED = 7081939


def models_by_r(cases):
    """Runs reference.R on the designs that have a negative binomial model to fit."""
    with tempfile.TemporaryDirectory() as folder:
        table, answer = os.path.join(folder, 'designs.tsv'), os.path.join(folder, 'fits.tsv')
        with open(table, 'w') as out:
            print('design', 'habitat', 'block', 'catch', 'nights', sep='\t', file=out)
            for case in cases['designs'] + [left for case in cases['designs'] for left in designs.left_out(case)]:
                habitat, catch = case['habitat'], [sum(row) for row in case['counts']]
                totals = [sum(c for c, h in zip(catch, habitat) if h == g) for g in range(max(habitat) + 1)]
                alone = '/' not in case['id'] and min(habitat.count(g) for g in set(habitat)) < 2
                if min(totals) == 0 or alone or not clumped(case, catch):
                    continue
                for i, c in enumerate(catch):
                    print(case['id'], habitat[i], 'NA' if case['block'] is None else case['block'][i], c,
                          repr(case['nights'][i]), sep='\t', file=out)
        run = subprocess.run(['Rscript', '--vanilla', os.path.join(HERE, 'reference.R'), table, answer],
                             check=True, stdout=subprocess.PIPE, text=True)
        fits = {}
        with open(answer) as lines:
            for line in lines:
                name, key, *values = line.rstrip('\n').split('\t')
                values = [None if v == 'NA' else float(v) for v in values]
                listed = key in ('coefficients', 'se', 'type', 'year', 'period', 'service', 'incidents', 'weight', 'group')
                fits.setdefault(name, {})[key] = values if listed else values[0]
    return fits, run.stdout.split()


def clumped(case, catch):
    """More spread than Poisson, so that theta is finite: judged by the direct maximisation."""
    habitat = np.array([case['habitat']])
    _, alpha = designs.countmodels.supremum(np.array(catch), np.array(case['nights']), habitat,
                                            int(habitat.max()) + 1, case['block'])
    return alpha[0] > 0


def pair(case):
    a, b = case['a'], case['b']
    shared = sum(x > 0 and y > 0 for x, y in zip(a, b))
    first, second = (sum(x > 0 >= y for x, y in zip(p, q)) for p, q in ((a, b), (b, a)))
    low, out, why = min(first, second), {'id': case['id']}, {}
    out['brayCurtis'] = designs.bray_curtis(a, b)
    some = shared + first + second > 0
    out['sorensen'] = (first + second) / (2 * shared + first + second) if some else None
    out['jaccard'] = (first + second) / (shared + first + second) if some else None
    parts = shared + low > 0
    out['sorensenTurnover'] = low / (shared + low) if parts else None
    out['sorensenNestedness'] = out['sorensen'] - out['sorensenTurnover'] if parts else None
    out['jaccardTurnover'] = 2 * low / (shared + 2 * low) if parts else None
    out['jaccardNestedness'] = out['jaccard'] - out['jaccardTurnover'] if parts else None
    for key in out:
        if out[key] is None:
            why[key] = 'both samples are empty' if not some else 'one sample is empty: its parts are 0/0'
    if why:
        out['why'] = why
    return out


def kruskal(case):
    result = designs.kruskal_wallis(case['groups'])
    return {'id': case['id'], **(result or {'h': None, 'df': None, 'pChiSquare': None, 'why': 'all values are tied'})}


def finite(value):
    """No NaN and no infinity may reach the file."""
    if isinstance(value, dict):
        return all(map(finite, value.values()))
    if isinstance(value, list):
        return all(map(finite, value))
    return not isinstance(value, float) or math.isfinite(value)


def write(path, parts):
    for key, rows in parts.items():
        for row in rows if isinstance(rows, list) else [rows]:
            assert finite(row), (key, row)
    with open(path, 'w') as out:
        chunks = []
        for key, rows in parts.items():
            if isinstance(rows, list):
                body = '[\n' + ',\n'.join(json.dumps(r, separators=(',', ':')) for r in rows) + '\n]'
            else:
                body = json.dumps(rows, separators=(',', ':'))
            chunks.append(f'"{key}": {body}')
        out.write('{\n' + ',\n'.join(chunks) + '\n}\n')


def main(source, target):
    with open(source) as file:
        cases = json.load(file)
    fits, r_versions = models_by_r(cases)
    by_id = {key: {c['id']: c for c in cases[key]} for key in ('abundance', 'incidence')}
    counts = {key: c['counts'] for key, c in by_id['abundance'].items()}
    abundance = [individuals.abundance(c) for c in cases['abundance']]
    equal = [individuals.equal_coverage(c, counts) for c in cases['equalCoverage']]
    garwood = spots.garwood_table()
    for count, lower, upper in garwood:
        assert np.allclose(designs.garwood(count), (lower, upper), rtol=1e-9)
    parts = {
        'versions': {'python': platform.python_version(), 'numpy': np.__version__, 'scipy': scipy.__version__,
                     'statsmodels': statsmodels.__version__, 'mpmath': mpmath.__version__,
                     'R': r_versions[0], 'MASS': r_versions[1]},
        'published': published.rows({a['id']: a for a in abundance}, equal[0], garwood, fits),
        'publishedFits': {name: fits[name] for name in ('ships', 'mites', 'plants')},
        'spots': spots.spots(),
        'garwood': garwood,
        'abundance': abundance,
        'incidence': [units.incidence(c) for c in cases['incidence']],
        'equalCoverage': equal,
        'bootstrap': [resampling.standard_errors(c, by_id, np.random.RandomState(SEED + i))
                      for i, c in enumerate(cases['bootstrap'])],
        'rates': [{'id': c['id'], **designs.rate(c['catch'], c['nights'])} for c in cases['rates']],
        'pairs': [pair(c) for c in cases['pairs']],
        'kruskalWallis': [kruskal(c) for c in cases['kruskalWallis']],
        'holm': [{'id': c['id'], 'adjusted': designs.holm(c['p'])} for c in cases['holm']],
        'shares': [{'id': c['id'], **shares.share(c['part'], c['whole'])} for c in cases['shares']],
        'precision': [planning.precision(c) for c in cases['precision']],
        'detection': [planning.detection(c, np.random.RandomState(SEED + 2000 + i))
                      for i, c in enumerate(cases['detection'])],
        'designs': [designs.design(c, fits, np.random.RandomState(SEED + 1000 + i))
                    for i, c in enumerate(cases['designs'])],
    }
    write(target, parts)
    wrong = [row for row in parts['published'] if not row['agrees']]
    print(f'{len(parts["published"]) - len(wrong)} of {len(parts["published"])} published values agree')
    for row in wrong:
        print('  differs:', row)
    return 1 if wrong else 0


if __name__ == '__main__':
    sys.exit(main(sys.argv[1] if len(sys.argv) > 1 else os.path.join(HERE, 'cases.json'),
                  sys.argv[2] if len(sys.argv) > 2 else os.path.join(HERE, 'reference.json')))
