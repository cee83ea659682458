# Makes changes.json: run in this folder as `Rscript changes.R > changes.json` (R 4.2.2, sandwich 3.0.2).
suppressMessages(library(sandwich))
one <- function(v) sprintf("%.15g", v)
list_of <- function(v) paste0("[", paste(one(v), collapse = ","), "]")
cat(sprintf('{\n "source": "R %s.%s, sandwich %s",\n', R.version$major, R.version$minor, packageVersion("sandwich")))

a <- sleep$extra[1:10]; b <- sleep$extra[11:20]
said <- function(t) sprintf('{"t": %s, "df": %s, "p": %s, "low": %s, "high": %s, "standardError": %s}', one(t$statistic), one(t$parameter), one(t$p.value), one(t$conf.int[1]), one(t$conf.int[2]), one(t$stderr))
cat(' "sleep": {\n  "source": "R datasets::sleep (Student 1908, Biometrika 6, 1-25); t.test(first, second)",\n')
cat('  "first":', list_of(a), ',\n  "second":', list_of(b), ',\n')
cat('  "welch":', said(t.test(a, b)), ',\n  "pooled":', said(t.test(a, b, var.equal = TRUE)), '\n },\n')

f <- lm(mpg ~ wt + hp + am, data = mtcars)
cat(' "stepTerm": {\n  "source": "lm(mpg ~ wt + hp + am, data = mtcars), am (manual gearbox) as the step; vcovHC(type = HC3); NeweyWest(prewhite = FALSE, adjust = TRUE, lag = 3) on the rows ordered by mpg, all else in the order of the data set",\n')
for (name in c("mpg", "wt", "hp", "am")) cat(sprintf('  "%s": %s,\n', name, list_of(mtcars[[name]])))
s <- summary(f)$coefficients["am", ]
hc <- sqrt(diag(vcovHC(f, type = "HC3")))["am"]
# Ordered by the response neighbours are alike, so that Newey-West errors are called for.
nw <- sqrt(diag(NeweyWest(lm(mpg ~ wt + hp + am, data = mtcars[order(mtcars$mpg), ]), lag = 3, prewhite = FALSE, adjust = TRUE)))["am"]
cat(sprintf('  "estimate": %s, "standardError": %s, "hc3": %s, "neweyWestOrdered": %s, "df": %d, "sigma": %s,\n', one(s[1]), one(s[2]), one(hc), one(nw), f$df.residual, one(summary(f)$sigma)))
centred <- transform(mtcars, wt = wt - mean(wt), hp = hp - mean(hp))
g <- lm(mpg ~ 0 + factor(am) + wt + hp, data = centred)
levels_hc <- sqrt(diag(vcovHC(g, type = "HC3")))[1:2]
cat(sprintf('  "levels": %s, "levelsHc3": %s\n },\n', list_of(coef(g)[1:2]), list_of(levels_hc)))
w <- lm(mpg ~ wt + hp + factor(cyl), data = mtcars)
cat(' "stretches": {\n  "source": "lm(mpg ~ wt + hp + factor(cyl), data = mtcars)",\n')
cat(sprintf('  "stretches": %s,\n  "wt": %s, "hp": %s, "residualSpread": %s, "degreesOfFreedom": %d\n },\n', list_of(mtcars$cyl), one(coef(w)["wt"]), one(coef(w)["hp"]), one(summary(w)$sigma), w$df.residual))

cat(' "power": {\n  "source": "power.t.test(), two-sample, two-sided, not strict",\n  "power": [\n')
cases <- list(c(20, 1, 1, .05), c(5, 2, 1, .05), c(2, 3, 1, .05), c(60, .5, 1, .05), c(400, .2, 1.1, .01), c(12, .8, .9, .1))
for (i in seq_along(cases)) { k <- cases[[i]]
  p <- power.t.test(n = k[1], delta = k[2], sd = k[3], sig.level = k[4])$power
  cat(sprintf('   {"n": %g, "delta": %g, "sd": %g, "level": %g, "power": %s}%s\n', k[1], k[2], k[3], k[4], one(p), ifelse(i < length(cases), ",", ""))) }
cat('  ],\n  "sample": [\n')
cases <- list(c(.9, 1, 1), c(.8, 1, 1), c(.8, .5, 1), c(.9, .25, 1.3), c(.8, 3, 1), c(.9, 2, 1))
for (i in seq_along(cases)) { k <- cases[[i]]
  n <- power.t.test(power = k[1], delta = k[2], sd = k[3], tol = 1e-12)$n
  cat(sprintf('   {"power": %g, "delta": %g, "sd": %g, "n": %s}%s\n', k[1], k[2], k[3], one(n), ifelse(i < length(cases), ",", ""))) }
cat('  ]\n },\n "noncentralT": {\n  "source": "pt(q, df, ncp, lower.tail = FALSE)",\n  "cases": [\n')
cases <- list(c(2, 5, 1), c(2.0244, 38, 3.1623), c(1, 2, 0), c(2.5, 198, 4), c(-1, 10, 1), c(3, 3, 6))
for (i in seq_along(cases)) { k <- cases[[i]]
  cat(sprintf('   {"t": %g, "df": %g, "ncp": %g, "upper": %s}%s\n', k[1], k[2], k[3], one(pt(k[1], k[2], k[3], lower.tail = FALSE)), ifelse(i < length(cases), ",", ""))) }
cat('  ]\n }\n}\n')
