"""Rates, count models, composition tests, indicator values and partitions of the invented designs."""
import numpy as np
import statsmodels.api as sm
from scipy import optimize, stats

import countmodels
import layouts
from layouts import p_value

LEVEL = 0.975


def rate(catch, nights):
    """Per 100 trap-nights. Ratio interval from two units on, else Garwood 1936 on the total."""
    c, e = np.array(catch, dtype=float), np.array(nights, dtype=float)
    estimate = c.sum() / e.sum()
    if len(c) > 1 and c.sum() > 0:
        n = len(c)
        s = np.sqrt(n / (n - 1) * np.sum((c - estimate * e) ** 2)) / c.sum()
        half = np.exp(stats.t.ppf(LEVEL, n - 1) * s)
        return {'rate': 100 * estimate, 's': float(s), 'lower': 100 * estimate / half, 'upper': 100 * estimate * half,
                'interval': 'ratio'}
    lower, upper = garwood(int(c.sum()))
    return {'rate': 100 * estimate, 's': None, 'lower': 100 * lower / e.sum(), 'upper': 100 * upper / e.sum(),
            'interval': 'garwood'}


def garwood(count):
    lower = stats.chi2.ppf(1 - LEVEL, 2 * count) / 2 if count else 0.0
    return float(lower), float(stats.chi2.ppf(LEVEL, 2 * count + 2) / 2)


def ranks(values):
    """Mean ranks, and sum of t^3 - t over the ties."""
    order = np.sort(values)
    mean = np.array([(np.searchsorted(order, v, 'left') + np.searchsorted(order, v, 'right') + 1) / 2 for v in values])
    _, sizes = np.unique(values, return_counts=True)
    return mean, int(np.sum(sizes ** 3 - sizes))


def kruskal_wallis(groups):
    """Kruskal & Wallis 1952 with the correction for ties."""
    values = np.array([v for g in groups for v in g], dtype=float)
    n = len(values)
    mean, ties = ranks(values)
    if ties == n ** 3 - n:
        return None
    at, h = 0, 0.0
    for g in groups:
        h += mean[at:at + len(g)].sum() ** 2 / len(g)
        at += len(g)
    h = (12 / (n * (n + 1)) * h - 3 * (n + 1)) / (1 - ties / (n ** 3 - n))
    df = len(groups) - 1
    assert abs(h - stats.kruskal(*groups).statistic) < 1e-9
    return {'h': float(h), 'df': df, 'pChiSquare': float(stats.chi2.sf(h, df))}


def kruskal_permutation(rates, habitat, assignments):
    mean, ties = ranks(np.array(rates))
    n = len(rates)
    if ties == n ** 3 - n:
        return None
    hot = layouts.one_hot(assignments, max(habitat) + 1)
    sums = hot @ mean
    h = np.sum(sums ** 2 / hot.sum(axis=2), axis=1)
    observed = sum(mean[np.array(habitat) == k].sum() ** 2 / habitat.count(k) for k in range(max(habitat) + 1))
    return p_value(h, observed)


def bray_curtis(a, b):
    total = float(np.sum(a) + np.sum(b))
    return float(np.sum(np.abs(np.array(a, dtype=float) - np.array(b)))) / total if total > 0 else None


def dissimilarities(rows):
    n = len(rows)
    d = np.zeros((n, n))
    for i in range(n):
        for j in range(i):
            value = bray_curtis(rows[i], rows[j])
            if value is None:
                return None
            d[i, j] = d[j, i] = value
    return d


def dummies(labels):
    return np.array([[float(v == name) for name in sorted(set(labels))] for v in labels])


def hat(columns):
    """Projection onto the space of the columns."""
    return columns @ np.linalg.pinv(columns)


def permanova(d, habitat, block, assignments):
    """Anderson 2001; habitats after blocks where there are any: the two-way model without interaction.

    McArdle & Anderson 2001: sums of squares are traces of projections times Gower's matrix. Habitats are what
    the projection onto blocks and habitats has beyond that onto blocks; without blocks this is the one-factor
    analysis. F of a permutation within blocks rises with the habitats' sum of squares.
    """
    n, groups = len(d), max(habitat) + 1
    centre = np.eye(n) - 1 / n
    gower = centre @ (-d ** 2 / 2) @ centre
    beside = dummies(block) if block else np.ones((n, 1))
    rest = np.eye(n) - hat(beside)
    df1, df2 = groups - 1, n - groups - beside.shape[1] + 1

    def explained(labels):
        return float(np.trace(hat(rest @ dummies(labels)) @ gower))

    total, between = float(np.trace(gower)), explained(habitat)
    within = float(np.trace(rest @ gower)) - between
    if block is None:
        near_one_factor(d, habitat, total, within)
    if within <= 1e-12 * total or df2 == 0:
        return None
    out = {'ssTotal': total, 'ssWithin': within, 'df': [df1, df2], 'f': between / df1 / (within / df2),
           'r2': between / total, 'p': None}
    if assignments is not None:
        # sizes within blocks stay, so that one inverse serves every permutation of the dummies
        inverse = np.linalg.pinv(dummies(habitat).T @ rest @ dummies(habitat), rcond=1e-9, hermitian=True)
        hot = layouts.one_hot(assignments, groups)
        products = np.einsum('agi,ij,ahj->agh', hot, rest @ gower @ rest, hot, optimize=True)
        out['p'] = p_value(np.einsum('agh,gh->a', products, inverse), between)
    return out


def near_one_factor(d, habitat, total, within):
    """The sums of squares by the other road: squared dissimilarities over numbers of sites."""
    square, direct = d ** 2, 0.0
    for g in range(max(habitat) + 1):
        at = [i for i, h in enumerate(habitat) if h == g]
        direct += square[np.ix_(at, at)].sum() / (2 * len(at))
    assert np.allclose([square[np.triu_indices(len(d), 1)].sum() / len(d), direct], [total, within], atol=1e-12)


def variance_ratio(z, labels):
    """F of a one-way analysis of variance; None where nothing varies within."""
    groups = [z[labels == g] for g in range(labels.max() + 1)]
    within = sum(((g - g.mean()) ** 2).sum() for g in groups)
    between = sum(len(g) * (g.mean() - z.mean()) ** 2 for g in groups)
    df1, df2 = len(groups) - 1, len(z) - len(groups)
    if df2 == 0 or within <= 1e-12 * (within + between) or within <= 1e-20:
        return None
    return float(between / df1 / (within / df2))


def dispersion(d, habitat, assignments=None):
    """Anderson 2006: distance of each site to its habitat's centroid in the full principal-coordinate space.

    Squared distance = positive axes minus negative axes = mean d^2 to the habitat's sites minus half their
    mean squared dissimilarity. Rule for a negative one: 0, which keeps the order of the sites.
    """
    square, labels = d ** 2, np.array(habitat)
    z, negative = np.zeros(len(d)), 0
    for g in range(max(habitat) + 1):
        at = [i for i, h in enumerate(habitat) if h == g]
        inner = square[np.ix_(at, at)]
        squared = inner.mean(axis=1) - inner.mean() / 2
        negative += int(np.sum(squared < -1e-12))
        z[at] = np.sqrt(np.maximum(squared, 0))
    single = min(habitat.count(g) for g in set(habitat)) < 2
    f = None if single else variance_ratio(z, labels)
    out = {'distances': [float(v) for v in z], 'negativeSquares': negative, 'f': f, 'p': None}
    if f is not None and assignments is not None:
        out['p'] = p_value(residual_ratios(d, labels, assignments), f)
    return out


def residual_ratios(d, labels, assignments):
    """F of every assignment of the sites' deviations from their own centroids, on all axes (Anderson 2006)."""
    n = len(d)
    centre = np.eye(n) - 1 / n
    values, vectors = np.linalg.eigh(centre @ (-d ** 2 / 2) @ centre)
    axes, sign = vectors * np.sqrt(np.abs(values)), np.sign(values)
    hot = layouts.one_hot(labels[None], labels.max() + 1)[0]
    residuals = axes - hot.T @ (hot @ axes / hot.sum(axis=1, keepdims=True))
    out = []
    for one in assignments:
        hot = layouts.one_hot(one[None], labels.max() + 1)[0]
        gap = residuals - hot.T @ (hot @ residuals / hot.sum(axis=1, keepdims=True))
        f = variance_ratio(np.sqrt(np.maximum((gap ** 2 * sign).sum(axis=1), 0)), one)
        out.append(np.inf if f is None else f)
    return out


def principal_coordinates(d):
    """Gower 1966: eigenvalues of the doubly centred -d^2/2, falling, negative ones kept; and two axes."""
    n = len(d)
    centre = np.eye(n) - 1 / n
    values, vectors = np.linalg.eigh(centre @ (-d ** 2 / 2) @ centre)
    order = np.argsort(-values)
    values, vectors = values[order], vectors[:, order]
    axes = vectors[:, :2] * np.sqrt(np.maximum(values[:2], 0))
    return values, axes


def isotonic(values):
    """Pool adjacent violators."""
    level, weight = [], []
    for v in values:
        level.append(float(v))
        weight.append(1)
        while len(level) > 1 and level[-2] > level[-1]:
            merged = level[-2] * weight[-2] + level[-1] * weight[-1]
            weight[-2:] = [weight[-2] + weight[-1]]
            level[-2:] = [merged / weight[-1]]
    return np.repeat(level, weight)


def stress_parts(points, pairs, d):
    gap = points[pairs[0]] - points[pairs[1]]
    distance = np.sqrt((gap ** 2).sum(axis=1))
    # primary approach to ties (Kruskal 1964): tied dissimilarities may take any order
    order = np.lexsort((distance, d))
    fitted = np.empty_like(distance)
    fitted[order] = isotonic(distance[order])
    return gap, distance, fitted


def stress1(points, pairs, d):
    _, distance, fitted = stress_parts(points, pairs, d)
    return float(np.sqrt(((distance - fitted) ** 2).sum() / (distance ** 2).sum()))


def least_stress(d, axes, stream, starts=25):
    """Smallest stress-1 in two dimensions over many starts: a bound for other programs, not a target."""
    n = len(d)
    pairs = np.triu_indices(n, 1)
    # rounded so that equal dissimilarities are equal
    flat = np.round(d[pairs], 12)

    def objective(x):
        points = x.reshape(n, 2)
        gap, distance, fitted = stress_parts(points, pairs, flat)
        raw, scale = ((distance - fitted) ** 2).sum(), (distance ** 2).sum()
        pull = 2 * (distance - fitted) / scale - 2 * raw * distance / scale ** 2
        each = (pull / np.maximum(distance, 1e-12))[:, None] * gap
        gradient = np.zeros((n, 2))
        np.add.at(gradient, pairs[0], each)
        np.add.at(gradient, pairs[1], -each)
        return raw / scale, gradient.ravel()

    best = np.inf
    for start in range(starts):
        x = axes if start == 0 else stream.normal(size=(n, 2)) * axes.std()
        result = optimize.minimize(objective, x.ravel(), jac=True, method='L-BFGS-B',
                                   options={'maxiter': 600, 'ftol': 1e-14, 'gtol': 1e-10})
        best = min(best, result.fun)
    return float(np.sqrt(best)), stress1(axes, pairs, flat)


def indicator_values(rows, habitat, assignments):
    """Dufrene & Legendre 1997 with group means: A = mean in habitat / sum of means, B = share of its sites held.

    One row per species: [habitat of the greatest A B, A, B, 100 A B, p, Holm p]; None where never caught.
    """
    x = np.array(rows, dtype=float)
    groups = max(habitat) + 1

    def parts(hot):
        size = hot.sum(axis=2)[:, :, None]
        mean, held = hot @ x / size, hot @ (x > 0) / size
        total = mean.sum(axis=1, keepdims=True)
        return mean / np.where(total > 0, total, 1), held

    a, b = parts(layouts.one_hot(np.array([habitat]), groups))
    a, b = a[0], b[0]
    best = np.argmax(np.round(a * b, 12), axis=0)
    out = []
    greatest = None
    if assignments is not None:
        pa, pb = parts(layouts.one_hot(assignments, groups))
        greatest = (pa * pb).max(axis=1)
    caught = x.sum(axis=0) > 0
    p = [p_value(greatest[:, s], (a * b)[:, s].max()) if caught[s] else None for s in range(x.shape[1])] \
        if greatest is not None else [None] * x.shape[1]
    adjusted = iter(holm([v for v in p if v is not None]))
    for s in range(x.shape[1]):
        if not caught[s]:
            out.append(None)
            continue
        g = int(best[s])
        out.append([g, float(a[g, s]), float(b[g, s]), float(100 * a[g, s] * b[g, s]), p[s],
                    None if p[s] is None else next(adjusted)])
    return out


def holm(p):
    """Holm 1979, step-down, kept monotone and at most 1."""
    order = sorted(range(len(p)), key=lambda i: p[i])
    out, running = [0.0] * len(p), 0.0
    for place, i in enumerate(order):
        running = max(running, min(1.0, (len(p) - place) * p[i]))
        out[i] = running
    return out


def partition(rows):
    """Alpha, beta, gamma of order 0, 1, 2 with equal weights (Jost 2007); None with an empty community."""
    x = np.array(rows, dtype=float)
    if np.any(x.sum(axis=1) == 0):
        return None
    p = x / x.sum(axis=1, keepdims=True)
    pooled = p.mean(axis=0)

    def entropy(v):
        v = v[v > 0]
        return -np.sum(v * np.log(v))

    alpha = [float((p > 0).sum(axis=1).mean()), float(np.exp(np.mean([entropy(v) for v in p]))),
             float(1 / np.mean((p ** 2).sum(axis=1)))]
    gamma = [float((pooled > 0).sum()), float(np.exp(entropy(pooled))), float(1 / np.sum(pooled ** 2))]
    return {'alpha': alpha, 'beta': [g / a for a, g in zip(alpha, gamma)], 'gamma': gamma}


def baselga_multi(rows):
    """Baselga 2010, multiple sites: Sorensen, its turnover (Simpson) and nestedness parts."""
    x = np.array(rows) > 0
    low = high = 0
    for i in range(len(x)):
        for j in range(i):
            only_i, only_j = int(np.sum(x[i] & ~x[j])), int(np.sum(x[j] & ~x[i]))
            low += min(only_i, only_j)
            high += max(only_i, only_j)
    shared = int(x.sum() - x.any(axis=0).sum())
    if shared + low == 0:
        return None
    sorensen = (low + high) / (2 * shared + low + high)
    turnover = low / (shared + low)
    return {'sorensen': sorensen, 'turnover': turnover, 'nestedness': sorensen - turnover}


def model_matrix(case):
    groups = max(case['habitat']) + 1
    full = countmodels.design_matrices(np.array([case['habitat']]), groups, case['block'])[0]
    return full, np.delete(full, list(range(1, groups)), axis=1)


def poisson(case, y):
    offset = np.log(case['nights'])
    full, none = model_matrix(case)
    fit, null = (sm.GLM(y, x, family=sm.families.Poisson(), offset=offset).fit(tol=1e-13, maxiter=200)
                 for x in (full, none))
    return {'coefficients': [float(v) for v in fit.params], 'se': [float(v) for v in fit.bse],
            'logLik': float(fit.llf), 'deviance': float(fit.deviance), 'df': int(fit.df_resid),
            'nullLogLik': float(null.llf), 'lr': float(2 * (fit.llf - null.llf))}


def pairwise(case, coefficients, theta):
    """Rate ratio of each pair, later over earlier habitat: the information given theta shrunk by (n - p)/n, t(n - p).

    n sites, p columns of the model matrix. Also the standard errors of the coefficients given theta, not shrunk.
    """
    x, _ = model_matrix(case)
    sites, parameters = x.shape
    df = sites - parameters
    assert df > 0, case['id']
    groups = max(case['habitat']) + 1
    mu = np.exp(x @ coefficients + np.log(case['nights']))
    weight = mu / (1 + (mu / theta if np.isfinite(theta) else 0))
    information = (x * weight[:, None]).T @ x
    shrunk = np.linalg.inv(information * (df / sites))
    out = []
    for i in range(groups):
        for j in range(i + 1, groups):
            contrast = np.zeros(x.shape[1])
            contrast[j] = 1
            if i:
                contrast[i] = -1
            log_ratio, se = float(contrast @ coefficients), float(np.sqrt(contrast @ shrunk @ contrast))
            half = stats.t.ppf(LEVEL, df) * se
            out.append([i, j, float(np.exp(log_ratio)), se, float(np.exp(log_ratio - half)), float(np.exp(log_ratio + half))])
    return out, np.sqrt(np.diag(np.linalg.inv(information)))


def left_out(case):
    """The design without each of its sites in turn, where every habitat keeps one; a few designs, since each is a fit."""
    out = []
    for site in range(len(case['habitat']) if case['id'].endswith('1') and len(case['habitat']) <= 8 else 0):
        kept = [i for i in range(len(case['habitat'])) if i != site]
        habitat = [case['habitat'][i] for i in kept]
        if set(habitat) != set(case['habitat']) or min(case['habitat'].count(h) for h in set(habitat)) < 2:
            continue
        block = case['block'] and [case['block'][i] for i in kept]
        names = block and sorted(set(block))
        out.append({'id': f"{case['id']}/{site}", 'habitat': habitat, 'block': block and [names.index(b) for b in block],
                    'nights': [case['nights'][i] for i in kept], 'counts': [case['counts'][i] for i in kept]})
    return out


def ratios_without(case, fits):
    """[site, ratios of all pairs without it]; null where that leaves no model."""
    out = []
    for left in left_out(case):
        y = np.array(left['counts']).sum(axis=1)
        site = int(left['id'].split('/')[1])
        if any(y[np.array(left['habitat']) == g].sum() == 0 for g in set(left['habitat'])):
            out.append([site, None])
        elif left['id'] in fits:
            fit = fits[left['id']]
            out.append([site, [row[2] for row in pairwise(left, np.array(fit['coefficients']), fit['theta'])[0]]])
        else:
            flat = poisson(left, y)['coefficients']
            out.append([site, [row[2] for row in pairwise(left, np.array(flat), np.inf)[0]]])
    return out


def design(case, fits, stress_stream):
    habitat, block, nights = case['habitat'], case['block'], np.array(case['nights'])
    counts = np.array(case['counts'])
    y, groups = counts.sum(axis=1), max(habitat) + 1
    sizes = [habitat.count(g) for g in range(groups)]
    assignments = layouts.all_assignments(habitat, block)
    out = {'id': case['id'], 'catch': [int(v) for v in y], 'assignments': layouts.number_of(habitat, block),
           'floor': layouts.floor(habitat, block)}
    why = {}
    out['rates'] = [rate(y[np.array(habitat) == g], nights[np.array(habitat) == g]) for g in range(groups)]
    site_rates = list(100 * y / nights)
    grouped = [[r for r, h in zip(site_rates, habitat) if h == g] for g in range(groups)]
    out['kruskalWallis'] = kruskal_wallis(grouped)
    out['kruskalWallisP'] = None if assignments is None else kruskal_permutation(site_rates, habitat, assignments)

    separated = any(y[np.array(habitat) == g].sum() == 0 for g in range(groups))
    for key in ('poisson', 'negativeBinomial', 'ratios', 'modelP'):
        out[key] = None
    if separated or min(sizes) < 2:
        reason = 'a habitat without catch: separation' if separated else 'one site in a habitat: no test'
        for key in ('poisson', 'negativeBinomial', 'ratios', 'modelP'):
            why[key] = reason
    else:
        out['poisson'] = poisson(case, y)
        height, alpha = countmodels.supremum(y, nights, np.array([habitat]), groups, block)
        flat, flat_alpha = countmodels.supremum(y, nights, np.zeros((1, len(y)), dtype=int), 1, block)
        out['overdispersed'] = bool(alpha[0] > 0)
        out['logLikSupremum'] = [float(height[0]), float(flat[0])]
        if alpha[0] > 0:
            fit = dict(fits[case['id']])
            assert abs(fit['logLik'] - height[0]) < 1e-7, (case['id'], fit['logLik'], height[0])
            assert abs(fit['theta'] * alpha[0] - 1) < 1e-4, (case['id'], fit['theta'], 1 / alpha[0])
            if flat_alpha[0] > 0:
                assert abs(fit['nullLogLik'] - flat[0]) < 1e-7, (case['id'], fit['nullLogLik'], flat[0])
            out['negativeBinomial'] = fit
            out['ratios'], se = pairwise(case, np.array(fit['coefficients']), fit['theta'])
            assert np.allclose(se, fit['se'], rtol=1e-7), (case['id'], se, fit['se'])
        else:
            why['negativeBinomial'] = 'no more spread than Poisson: theta goes to infinity'
            out['ratios'], _ = pairwise(case, np.array(out['poisson']['coefficients']), np.inf)
        if assignments is None:
            why['modelP'] = 'more than %d assignments' % layouts.MOST
        else:
            named = countmodels.canonical(assignments, groups)
            own = countmodels.canonical(np.array([habitat]), groups)[0]
            unique, inverse = np.unique(named, axis=0, return_inverse=True)
            heights, _ = countmodels.supremum(y, nights, unique, groups, block)
            observed = heights[np.flatnonzero((unique == own).all(axis=1))[0]]
            gap = np.abs(heights - observed)
            near = (gap > 1e-8) & (gap < 1e-5)
            assert not near.any(), (case['id'], 'near tie', gap[near])
            out['modelP'] = float(np.mean(heights[inverse] >= observed - 1e-8))

    rows = 100 * counts / nights[:, None]
    d = dissimilarities(rows)
    if d is None:
        for key in ('permanova', 'permanovaSquareRoot', 'dispersion', 'eigenvalues', 'stress'):
            out[key], why[key] = None, 'Bray-Curtis of two empty sites is not defined'
    else:
        out['permanova'] = permanova(d, habitat, block, assignments)
        out['dispersion'] = dispersion(d, habitat, assignments)
        if out['dispersion']['f'] is None:
            why['dispersion.f'] = why['dispersion.p'] = ('one site in a habitat has no spread' if min(sizes) < 2 else
                                                         'distances to the centroid do not vary within habitats')
        values, axes = principal_coordinates(d)
        out['eigenvalues'] = [float(v) for v in values]
        out['stress'] = None
        if len(d) < 8:
            why['stress'] = 'under eight sites: not computed'
        elif len(d) > 18:
            why['stress'] = 'over eighteen sites: not computed'
        else:
            least, of_axes = least_stress(d, axes, stress_stream)
            out['stress'] = {'ofPrincipalAxes': of_axes, 'least': least}
        roots = dissimilarities(np.sqrt(rows))
        out['permanovaSquareRoot'] = permanova(roots, habitat, block, assignments)
    if assignments is None:
        for key in ('kruskalWallisP', 'permanova.p', 'dispersion.p', 'indicators.p'):
            why[key] = 'more than %d assignments' % layouts.MOST
    out['indicators'] = indicator_values(rows, habitat, assignments)
    pooled = [counts[np.array(habitat) == g].sum(axis=0) for g in range(groups)]
    for key, communities in (('partitionSites', counts), ('partitionHabitats', pooled)):
        out[key] = partition(communities)
        if out[key] is None:
            why[key] = 'a community without individuals'
    out['multiSite'] = baselga_multi(counts)
    out['ratiosWithout'] = ratios_without(case, fits) if out['ratios'] else []
    if why:
        out['why'] = why
    return out
