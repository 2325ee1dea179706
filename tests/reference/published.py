"""Published values: what was printed, and what this implementation gives."""
import numpy as np

import designs
from cases import PUBLISHED_ABUNDANCE
from exact import hill
from individuals import Sample


def rows(abundance, equal, spots_garwood, fits):
    """One row per printed value; 'within' is half a unit of its last printed place."""
    out = []

    def check(name, expected, computed, half):
        computed = float(computed)
        out.append({'check': name, 'expected': expected, 'computed': computed, 'within': half,
                    'agrees': bool(abs(computed - expected) <= half * 1.000001)})

    for name, values in (
            ('hemlock-girdled', [168, 26, 43.893, 14.306, 0.92886, 12.060, 7.840, 13.826, 8.175]),
            ('hemlock-logged', [252, 37, 61.403, 18.532, 0.94457, 14.421, 6.761, 16.337, 6.920])):
        r = abundance[name]
        got = [r['n'], r['s'], r['chao1']['estimate'], r['chao1']['se'], r['coverage'], r['hill']['1'], r['hill']['2'],
               r['asymptoticQ1'], r['asymptoticQ2']]
        labels = ['n', 'S', 'Chao1', 'Chao1 SE', 'coverage', 'q1', 'q2', 'asymptotic q1', 'asymptotic q2']
        for label, e, g in zip(labels, values, got):
            check(f'{name} {label}', e, g, 0 if label in ('n', 'S') else 5e-6 if label == 'coverage' else 5e-4)
    girdled, logged = (Sample(PUBLISHED_ABUNDANCE[k]) for k in ('hemlock-girdled', 'hemlock-logged'))
    check('logged rarefied to 168', 31.7073, logged.q0(168), 5e-5)
    check('logged extrapolated to 2n', 47.6445, logged.q0(504), 5e-5)
    for m, e in ((50, 15.0301), (100, 20.4594), (150, 24.6706), (336, 34.7307)):
        check(f'girdled q0 at {m}', e, girdled.q0(m), 5e-5)
    check('girdled q1 at 2n by Chao et al. 2014', 12.913, girdled.q1(336), 5e-4)
    check('girdled coverage at 2n', 0.96357, girdled.coverage(336), 5e-6)
    check('logged size at that coverage', 436.57, equal['members'][1]['size'], 5e-3)
    check('Villa-Castillo & Wagner per 100', 14.359, designs.rate([919], [160 * 40.0])['rate'], 5e-4)
    check('Bergmann per 100', 138.810, designs.rate([583], [10 * 42.0])['rate'], 5e-4)
    check('Lobo per 100', 512.333, designs.rate([1537], [60 * 5.0])['rate'], 5e-4)
    check('ships deviance', 38.695, fits['ships']['deviance'], 5e-4)
    check('ships df', 25, fits['ships']['df'], 0)
    for place, e in zip(range(1, 5), (-0.5433, -0.6874, -0.0760, 0.3256)):
        check(f'ships type {"BCDE"[place - 1]}', e, fits['ships']['coefficients'][place], 5e-5)
    check('mites k', 1.0246, fits['mites']['theta'], 5e-5)
    weight, group = np.array(fits['plants']['weight']), [int(v) for v in fits['plants']['group']]
    f = designs.permanova(np.abs(weight[:, None] - weight[None, :]), group, None, None)
    check('plants F', 4.846088, f['f'], 5e-7)
    check('plants R2', 0.264148, f['r2'], 5e-7)
    check('plants F against aov', fits['plants']['f'], f['f'], 1e-9)
    check('tanks Bray-Curtis', 0.3939, designs.bray_curtis([6, 7, 4], [10, 0, 6]), 5e-5)
    parts = designs.baselga_multi([[1] * 5 + [0] * 6, [1] * 4 + [0] + [1] * 6])
    for key, e in (('sorensen', 0.4667), ('turnover', 0.2), ('nestedness', 0.2667)):
        check(f'shared 4, 1, 6: {key}', e, parts[key], 5e-5)
    ten = next(r for r in spots_garwood if r[0] == 10)
    check('Garwood 10 lower', 4.795, ten[1], 5e-4)
    check('Garwood 10 upper', 18.390, ten[2], 5e-4)
    for k in range(1, 5):
        shares = [1 / k] * k
        check(f'even {k}: H', [0, 0.6931, 1.0986, 1.3863][k - 1], np.log(float(hill(shares, 1))), 5e-5)
        check(f'even {k}: exp(H)', k, hill(shares, 1), 1e-12)
    return out
