# A second implementation of what src/statistics computes about rates, models and dissimilarities, in base R and
# MASS. Run from this folder: Rscript rates-and-models.R > rates-and-models.json
library(MASS)

number <- function(x) {
  text <- format(x, digits = 15, scientific = TRUE, trim = TRUE)
  if (length(x) == 1) text else paste0("[", paste(text, collapse = ", "), "]")
}
list_of <- function(x) paste0("[", paste(format(x, digits = 15, trim = TRUE), collapse = ", "), "]")
words <- function(x) paste0("[", paste0('"', x, '"', collapse = ", "), "]")
object <- function(...) {
  parts <- c(...)
  paste0("{", paste0('"', names(parts), '": ', parts, collapse = ", "), "}")
}
tight <- glm.control(epsilon = 1e-13, maxit = 500)

designs <- list(
  list(y = c(12, 30, 7, 44, 85, 61), e = c(84, 90, 70, 84, 88, 60), h = c("a", "a", "a", "b", "b", "b")),
  list(y = c(0, 3, 1, 9, 4, 22, 15, 8, 31), e = c(50, 42, 56, 56, 49, 56, 14, 28, 56),
       h = c("a", "a", "a", "b", "b", "b", "c", "c", "c")),
  list(y = c(210, 95, 44, 310, 160, 20, 75, 640), e = c(120, 110, 95.5, 118, 120, 60, 98, 120),
       h = rep(c("a", "b"), 4), b = rep(c("n", "s", "e", "w"), each = 2)),
  list(y = c(2, 0, 5, 1, 7, 11, 3, 18, 2, 6, 9, 40), e = rep(c(28, 35), 6), h = rep(c("a", "b", "c"), 4),
       b = rep(c("n", "s"), each = 6))
)
fits <- sapply(designs, function(d) {
  d$h <- factor(d$h, levels = unique(d$h))
  if (!is.null(d$b)) d$b <- factor(d$b, levels = unique(d$b))
  full <- if (is.null(d$b)) y ~ h + offset(log(e)) else y ~ h + b + offset(log(e))
  m <- glm.nb(full, data = d, control = tight)
  m <- update(m, init.theta = m$theta, start = coef(m))
  null <- glm.nb(if (is.null(d$b)) y ~ 1 + offset(log(e)) else y ~ b + offset(log(e)), data = d, control = tight)
  object(
    counts = list_of(d$y), efforts = list_of(d$e), groups = words(d$h),
    if (!is.null(d$b)) c(blocks = words(d$b)),
    theta = number(m$theta), thetaStandardError = number(m$SE.theta), coefficients = number(unname(coef(m))),
    standardErrors = number(unname(summary(m)$coefficients[, 2])), deviance = number(m$deviance),
    logLikelihood = number(as.numeric(logLik(m))), pearson = number(unname(residuals(m, "pearson"))),
    likelihoodRatio = number(as.numeric(2 * (logLik(m) - logLik(null))))
  )
})

rates <- c(1.5, 0, 3.25, 3.25, 7, 0, 9.5, 2, 11, 4.125)
habitats <- rep(c("a", "b"), 5)
exact <- combn(10, 5)
height <- apply(exact, 2, function(i) kruskal.test(rates, replace(rep("b", 10), i, "a"))$statistic)
kw <- kruskal.test(rates, habitats)
kruskal <- object(
  values = list_of(rates), groups = words(habitats), statistic = number(unname(kw$statistic)),
  chiSquareP = number(kw$p.value), exactP = number(mean(height >= kw$statistic - 1e-9))
)

catch <- rbind(c(10, 0, 3, 1, 0), c(14, 2, 0, 0, 1), c(7, 1, 5, 0, 0), c(2, 9, 0, 6, 0), c(0, 12, 1, 4, 3),
               c(1, 30, 0, 9, 0), c(4, 4, 4, 0, 8), c(0, 3, 9, 1, 20), c(1, 0, 7, 0, 11))
n <- nrow(catch)
bray <- outer(1:n, 1:n, Vectorize(function(i, j) sum(abs(catch[i, ] - catch[j, ])) / sum(catch[c(i, j), ])))
group <- rep(1:3, each = 3)
gower <- function(d) { j <- diag(nrow(d)) - 1 / nrow(d); j %*% (-d^2 / 2) %*% j }
hat <- function(x) x %*% ginv(x)
block <- rep(1:3, 3)
one <- model.matrix(~ factor(group))
both <- model.matrix(~ factor(block) + factor(group))
only <- model.matrix(~ factor(block))
G <- gower(bray)
ss <- function(x) sum(diag(hat(x) %*% G))
total <- sum(diag(G))
f_one <- (ss(one) / 2) / ((total - ss(one)) / 6)
f_block <- ((ss(both) - ss(only)) / 2) / ((total - ss(both)) / 4)
deviation <- sapply(1:n, function(i) {
  mine <- which(group == group[i])
  mean(bray[i, mine]^2) - sum(bray[mine, mine]^2) / (2 * length(mine)^2)
})
z <- sqrt(pmax(0, deviation))
labellings <- unique(t(apply(as.matrix(expand.grid(rep(list(1:3), 9))), 1, identity)))
labellings <- labellings[rowSums(labellings == 1) == 3 & rowSums(labellings == 2) == 3, ]
f_of <- function(g) { x <- model.matrix(~ factor(g)); s <- ss(x); (s / 2) / ((total - s) / 6) }
fs <- apply(labellings, 1, f_of)
composition <- object(
  catch = paste0("[", paste(apply(catch, 1, list_of), collapse = ", "), "]"), groups = list_of(group), blocks = list_of(block),
  bray = number(bray[1, ]), pseudoF = number(f_one), r2 = number(ss(one) / total), p = number(mean(fs >= f_one - 1e-9)),
  blockedF = number(f_block), distances = number(z), dispersionF = number(anova(lm(z ~ factor(group)))[1, 4]),
  eigenvalues = number(eigen(G, symmetric = TRUE)$values), stress = number(isoMDS(bray, trace = FALSE, tol = 1e-9, maxit = 500)$stress / 100)
)

counts <- c(0, 1, 2, 10, 57, 1537)
garwood <- object(events = list_of(counts), low = number(qgamma(0.025, counts)), high = number(qgamma(0.975, counts + 1)))
p <- c(0.04, 0.001, 0.2, 0.03, 0.03, 0.9)

cat(object(
  versions = object(R = paste0('"', getRversion(), '"'), MASS = paste0('"', packageVersion("MASS"), '"')),
  models = paste0("[", paste(fits, collapse = ", "), "]"), kruskal = kruskal, composition = composition,
  garwood = garwood, holm = object(p = list_of(p), adjusted = number(p.adjust(p, "holm")))
), "\n", sep = "")
