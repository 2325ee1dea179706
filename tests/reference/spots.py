"""Spot values of special functions and distributions, in 40 digits, rounded once."""
from mpmath import mp, mpf

mp.dps = 40


def normal_cdf(x):
    return mp.erfc(-mpf(x) / mp.sqrt(2)) / 2


def gamma_lower(a, x):
    return mp.gammainc(mpf(a), 0, mpf(x), regularized=True)


def gamma_upper(a, x):
    return mp.gammainc(mpf(a), mpf(x), mp.inf, regularized=True)


def beta_cdf(a, b, x):
    return mp.betainc(mpf(a), mpf(b), 0, mpf(x), regularized=True)


def t_upper(t, df):
    t, df = mpf(t), mpf(df)
    tail = beta_cdf(df / 2, mpf(1) / 2, df / (df + t * t)) / 2
    return tail if t >= 0 else 1 - tail


def f_upper(f, d1, d2):
    f, d1, d2 = mpf(f), mpf(d1), mpf(d2)
    return beta_cdf(d2 / 2, d1 / 2, d2 / (d2 + d1 * f))


def quantile(upper, start, p):
    """x with upper(x) = p, by bisection of a falling function on (0, start doubled until low enough)."""
    low, high = mpf(0), mpf(start)
    while upper(high) > p:
        low, high = high, 2 * high
    for _ in range(90):
        middle = (low + high) / 2
        low, high = (middle, high) if upper(middle) > p else (low, middle)
    return (low + high) / 2


def t_quantile(p, df):
    """p as the decimal it is written as; upper half only."""
    return quantile(lambda t: t_upper(t, df), 4, 1 - mpf(str(p)))


def chi_square_quantile(p, df):
    return quantile(lambda x: gamma_upper(mpf(df) / 2, x / 2), df + 1, 1 - mpf(str(p)))


def negative_binomial_log(y, mu, theta):
    mu, theta = mpf(str(mu)), mpf(str(theta))
    return (mp.loggamma(y + theta) - mp.loggamma(theta) - mp.loggamma(y + 1)
            + theta * mp.log(theta / (theta + mu)) + y * mp.log(mu / (theta + mu)))


def garwood(count):
    lower = quantile(lambda x: gamma_upper(count, x), count, mpf('0.975')) if count else mpf(0)
    return lower, quantile(lambda x: gamma_upper(count + 1, x), count + 1, mpf('0.025'))


def spots():
    out = []

    def say(name, arguments, value):
        out.append([name, arguments, float(value)])

    for x in [-8, -3.5, -1.96, -0.5, 0, 0.25, 1, 1.96, 4]:
        say('normalCdf', [x], normal_cdf(x))
    for p in [0.001, 0.025, 0.2, 0.5, 0.9, 0.975, 0.995, 0.999999]:
        say('normalQuantile', [p], mp.sqrt(2) * mp.erfinv(2 * mpf(str(p)) - 1))
    for t, df in [(0, 3), (0.5, 1), (2.5, 2), (-1.25, 5), (4, 10), (12, 4), (2, 200)]:
        say('tUpper', [t, df], t_upper(t, df))
    for p in [0.9, 0.975, 0.995]:
        for df in [1, 2, 3, 5, 10, 22, 100, 1000]:
            say('tQuantile', [p, df], t_quantile(p, df))
    for x, df in [(0.1, 1), (3.84, 1), (5.99, 2), (25, 3), (80, 4), (30, 30), (1, 10)]:
        say('chiSquareUpper', [x, df], gamma_upper(mpf(df) / 2, mpf(str(x)) / 2))
    for p in [0.025, 0.5, 0.95, 0.975]:
        for df in [1, 2, 7, 20, 200, 2000]:
            say('chiSquareQuantile', [p, df], chi_square_quantile(p, df))
    for f, d1, d2 in [(0.2, 1, 4), (3.5, 2, 9), (4.846, 2, 27), (10, 3, 8), (50, 1, 10), (1, 5, 5)]:
        say('fUpper', [f, d1, d2], f_upper(str(f), d1, d2))
    for a, b, x in [(0.5, 0.5, 0.1), (2, 3, 0.4), (10, 0.5, 0.95), (50, 60, 0.4)]:
        say('betaRegularized', [a, b, x], beta_cdf(a, b, str(x)))
    for a, x in [(0.5, 0.2), (1, 3), (10, 4.795), (100, 120), (1000, 990)]:
        say('gammaRegularizedUpper', [a, x], gamma_upper(a, str(x)))
    for x in [0.1, 0.5, 1, 1.5, 3, 12.25, 1000, 1000000.5]:
        say('logGamma', [x], mp.loggamma(mpf(str(x))))
        say('digamma', [x], mp.digamma(mpf(str(x))))
        say('trigamma', [x], mp.polygamma(1, mpf(str(x))))
    for y, mu, theta in [(0, 2.5, 0.3), (7, 2.5, 0.3), (40, 35.5, 1.5), (1200, 900, 4), (3, 3, 1000000), (500, 480, 10000000)]:
        say('negativeBinomialLogPmf', [y, mu, theta], negative_binomial_log(y, mu, theta))
    for y, mu in [(0, 0.5), (4, 2.5), (100, 90), (5000, 5100)]:
        mu = mpf(str(mu))
        say('poissonLogPmf', [y, float(mu)], y * mp.log(mu) - mu - mp.loggamma(y + 1))
    return out


def garwood_table():
    return [[count] + [float(v) for v in garwood(count)] for count in
            [0, 1, 2, 3, 5, 10, 17, 30, 50, 100, 365, 1000, 10000, 1000000]]
