"""Distinct assignments of habitats to sites, within blocks, and the p values that they give."""
import math
from itertools import permutations

import numpy as np

MOST = 5000
TOLERANCE = 1e-9


def arrangements(labels):
    """Every distinct order of a list of labels."""
    if not labels:
        yield ()
        return
    for label in sorted(set(labels)):
        rest = list(labels)
        rest.remove(label)
        for tail in arrangements(rest):
            yield (label,) + tail


def blocks_of(habitat, block):
    block = block or [0] * len(habitat)
    return [[i for i, b in enumerate(block) if b == name] for name in sorted(set(block))]


def number_of(habitat, block):
    total = 1
    for sites in blocks_of(habitat, block):
        labels = [habitat[i] for i in sites]
        count = math.factorial(len(labels))
        for label in set(labels):
            count //= math.factorial(labels.count(label))
        total *= count
    return total


def floor(habitat, block):
    """Smallest p a statistic can have that does not care which habitat bears which name."""
    names = sorted(set(habitat))
    blocks = blocks_of(habitat, block)
    same = 0
    for order in permutations(names):
        renamed = dict(zip(names, order))
        same += all(sorted(renamed[habitat[i]] for i in sites) == sorted(habitat[i] for i in sites) for sites in blocks)
    return same / number_of(habitat, block)


def all_assignments(habitat, block):
    """(assignments, sites) array of habitat numbers; None where there are more than MOST."""
    if number_of(habitat, block) > MOST:
        return None
    rows = [np.array(habitat)]
    for sites in blocks_of(habitat, block):
        parts = list(arrangements([habitat[i] for i in sites]))
        grown = []
        for row in rows:
            for part in parts:
                new = row.copy()
                new[sites] = part
                grown.append(new)
        rows = grown
    return np.array(rows)


def one_hot(assignments, habitats):
    """(assignments, habitats, sites) of 0 and 1."""
    return (assignments[:, None, :] == np.arange(habitats)[None, :, None]).astype(float)


def p_value(values, observed):
    """Share of all assignments (the observed one among them) with a statistic at least the observed one."""
    slack = TOLERANCE * max(1.0, abs(observed))
    return int(np.sum(np.asarray(values) >= observed - slack)) / len(values)
