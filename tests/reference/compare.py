#!/usr/bin/python3
"""Compares two reference files: compare.py committed.json fresh.json. Exit 1 on a difference.

Closed forms: 1e-9 relative. Fitted models: 1e-6. Bootstrap: 8 % (Monte Carlo error of an SE from 2000
replicates is about 1.6 %). Smallest ratios by
simulation: 3 %. Least stress of many starts: 0.01 absolute. Versions are told, not compared.
"""
import json
import sys

FITTED = {'poisson', 'negativeBinomial', 'ratios', 'logLikSupremum', 'publishedFits', 'published'}
# sizes asked for in the narrow jump of coverage at n are as uncertain as the jump is narrow
JUMPY = {'sizeForCoverage'}


def allowed(path, value):
    if 'bootstrap' in path:
        return 0.08 * abs(value) + 1e-9
    if 'detection' in path:
        return 0.03 * abs(value)
    if 'least' in path:
        return 0.01
    if 'stress' in path:
        return 1e-6
    if FITTED & set(path):
        return 1e-6 * max(abs(value), 1e-3)
    if 'eigenvalues' in path:
        return 1e-9
    if JUMPY & set(path):
        return 1e-8 * abs(value) + 1e-12
    return 1e-9 * abs(value) + 1e-13


def compare(old, new, path, found):
    if type(old) is not type(new) and not (isinstance(old, (int, float)) and isinstance(new, (int, float))):
        found.append((path, old, new))
    elif isinstance(old, dict):
        for key in sorted(set(old) | set(new)):
            if key in old and key in new:
                compare(old[key], new[key], path + [key], found)
            else:
                found.append((path + [key], old.get(key, 'missing'), new.get(key, 'missing')))
    elif isinstance(old, list):
        if len(old) != len(new):
            found.append((path, f'{len(old)} entries', f'{len(new)} entries'))
        for i, (a, b) in enumerate(zip(old, new)):
            name = a['id'] if isinstance(a, dict) and 'id' in a else i
            compare(a, b, path + [name], found)
    elif isinstance(old, float) or isinstance(new, float):
        if abs(old - new) > allowed(path, old):
            found.append((path, old, new))
    elif old != new:
        found.append((path, old, new))


def main(old_path, new_path):
    with open(old_path) as old_file, open(new_path) as new_file:
        old, new = json.load(old_file), json.load(new_file)
    if old['versions'] != new['versions']:
        print('versions differ: committed', old['versions'], 'here', new['versions'])
    found = []
    compare({k: v for k, v in old.items() if k != 'versions'}, {k: v for k, v in new.items() if k != 'versions'}, [], found)
    for path, a, b in found[:40]:
        print('differs:', '/'.join(map(str, path)), 'committed', a, 'here', b)
    print(f'{len(found)} differences')
    return 1 if found else 0


if __name__ == '__main__':
    sys.exit(main(sys.argv[1], sys.argv[2]))
