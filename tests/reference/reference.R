# Negative binomial models by MASS, called by reference.py: Rscript reference.R designs.tsv fits.tsv
# In: one row per site (design, habitat, block or NA, catch, nights). Out: name, key, values, 17 digits.
suppressPackageStartupMessages(library(MASS))
arguments <- commandArgs(trailingOnly = TRUE)
sites <- read.delim(arguments[1], colClasses = c('character', 'integer', 'integer', 'numeric', 'numeric'))
out <- file(arguments[2], 'w')
say <- function(name, key, values)
  writeLines(paste(c(name, key, sprintf('%.17g', values)), collapse = '\t'), out)

# theta.ml, inside glm.nb, starts each time from a moment estimate and can run away from there. So the root
# of the same score is sought near a known good theta, on a log scale; the standard error comes from the
# same observed information as that of theta.ml.
best.theta <- function(y, mu, near) {
  score <- function(u) {
    theta <- exp(u)
    sum(digamma(theta + y) - digamma(theta) + log(theta) + 1 - log(theta + mu) - (y + theta) / (mu + theta))
  }
  theta <- exp(uniroot(score, log(near) + c(-0.1, 0.1), extendInt = 'yes', tol = 1e-15)$root)
  information <- sum(-trigamma(theta + y) + trigamma(theta) - 1 / theta + 2 / (mu + theta)
                     - (y + theta) / (mu + theta)^2)
  attr(theta, 'SE') <- sqrt(1 / information)
  theta
}

given <- function(formula, data, theta, start)
  suppressWarnings(glm(formula, family = negative.binomial(theta), data = data, start = start,
                       control = glm.control(epsilon = 1e-15, maxit = 100)))

# glm.nb stops when its steps are small; its two steps (coefficients given theta, theta given the means)
# are repeated with tight limits until neither moves, so that ten figures can be compared.
settle <- function(formula, data, theta, start) {
  for (turn in 1:500) {
    model <- given(formula, data, theta, start)
    start <- coef(model)
    better <- best.theta(data$catch, fitted(model), theta)
    moved <- abs(better / theta - 1)
    theta <- as.numeric(better)
    if (moved < 1e-13) break
  }
  list(theta = theta, se.theta = attr(better, 'SE'), coefficients = start,
       se = sqrt(diag(summary(model, dispersion = 1)$cov.scaled)),
       loglik = sum(dnbinom(data$catch, size = theta, mu = fitted(model), log = TRUE)))
}

maximum <- function(formula, data) {
  plain <- glm(formula, family = poisson, data = data)
  fit <- tryCatch(suppressWarnings(glm.nb(formula, data = data, control = glm.control(epsilon = 1e-12, maxit = 500))),
                  error = function(e) NULL)
  grid <- exp(seq(-3, 9, 0.25))
  heights <- sapply(grid, function(theta)
    sum(dnbinom(data$catch, size = theta, mu = fitted(given(formula, data, theta, coef(plain))), log = TRUE)))
  best <- settle(formula, data, grid[which.max(heights)], coef(plain))
  # glm.nb's own answer, where it stops at the maximum at all
  agrees <- !is.null(fit) && isTRUE(all.equal(fit$theta, best$theta, tolerance = 1e-3))
  c(best, list(of.glm.nb = if (agrees) c(fit$theta, fit$SE.theta) else c(NA, NA),
               spread = sum((data$catch - fitted(plain))^2 - data$catch)))
}

negative <- function(name, data, formula, null) {
  best <- maximum(formula, data)
  say(name, 'theta', best$theta)
  say(name, 'seTheta', best$se.theta)
  say(name, 'coefficients', best$coefficients)
  say(name, 'se', best$se)
  say(name, 'logLik', best$loglik)
  # as glm.nb leaves them, to show how little the settling moves; NA where glm.nb fails
  say(name, 'thetaOfGlmNb', best$of.glm.nb[1])
  say(name, 'seThetaOfGlmNb', best$of.glm.nb[2])
  if (is.null(null)) return(invisible())
  none <- maximum(null, data)
  if (none$spread > 0) {
    say(name, 'nullTheta', none$theta)
    say(name, 'nullLogLik', none$loglik)
    say(name, 'lr', 2 * (best$loglik - none$loglik))
  }
}

for (name in unique(sites$design)) {
  data <- sites[sites$design == name, ]
  data$habitat <- factor(data$habitat)
  # designs with a site left out are fitted for their ratios alone
  whole <- !grepl('/', name)
  if (all(is.na(data$block))) {
    negative(name, data, catch ~ habitat + offset(log(nights)), if (whole) catch ~ 1 + offset(log(nights)))
  } else {
    data$block <- factor(data$block)
    negative(name, data, catch ~ habitat + block + offset(log(nights)),
             if (whole) catch ~ block + offset(log(nights)))
  }
}

# published data sets that come with R and MASS
mites <- data.frame(catch = rep(0:7, c(70, 38, 17, 10, 9, 3, 2, 1)))
negative('mites', mites, catch ~ 1, NULL)
ships <- subset(MASS::ships, service > 0)
model <- glm(incidents ~ type + factor(year) + factor(period) + offset(log(service)), family = poisson, data = ships,
             control = glm.control(epsilon = 1e-14, maxit = 100))
say('ships', 'coefficients', coef(model))
say('ships', 'se', summary(model)$coefficients[, 2])
say('ships', 'deviance', deviance(model))
say('ships', 'df', df.residual(model))
say('ships', 'logLik', as.numeric(logLik(model)))
say('ships', 'type', as.integer(ships$type) - 1)
say('ships', 'year', as.integer(factor(ships$year)) - 1)
say('ships', 'period', as.integer(factor(ships$period)) - 1)
say('ships', 'service', ships$service)
say('ships', 'incidents', ships$incidents)
plants <- summary(aov(weight ~ group, data = PlantGrowth))[[1]]
say('plants', 'weight', PlantGrowth$weight)
say('plants', 'group', as.integer(PlantGrowth$group) - 1)
say('plants', 'f', plants[1, 'F value'])
close(out)
cat(as.character(getRversion()), as.character(packageVersion('MASS')), '\n')
