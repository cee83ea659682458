# Makes drift-series.json: run in this folder as `Rscript drift-series.R > drift-series.json` (R 4.2.2, base packages only).
# Mann-Kendall by its sums, Sen's slope as the median of pairs, Pettitt by signs and not by ranks, the flat-then-rising line and
# the intervals by optimize() and uniroot() on deviance(lm()): none of it the way the project computes them.
g <- function(v) paste0("[", paste(sprintf("%.15g", v), collapse = ","), "]")
n1 <- function(v) sprintf("%.15g", v)
study <- function(t, y) {
  n <- length(y); s <- 0
  for (i in 1:(n - 1)) s <- s + sum(sign(y[(i + 1):n] - y[i]))
  ties <- table(y)
  v <- (n * (n - 1) * (2 * n + 5) - sum(ties * (ties - 1) * (2 * ties + 5))) / 18
  slopes <- sort(outer(y, y, "-")[lower.tri(diag(n))] / outer(t, t, "-")[lower.tri(diag(n))])
  c95 <- qnorm(.975) * sqrt(v); N <- length(slopes)
  u <- sapply(1:(n - 1), function(k) sum(sign(outer(y[1:k], y[(k + 1):n], "-"))))
  K <- max(abs(u)); at <- which.max(abs(u))
  hinge <- function(o) deviance(lm(y ~ pmax(t - o, 0)))
  # No more than the third load from the end; the best of every stretch between two loads.
  best <- Inf
  for (i in 1:(n - 3)) {
    o <- optimize(hinge, c(t[i], t[i + 1]), tol = 1e-10)
    for (p in c(o$minimum, t[i], t[i + 1])) if (hinge(p) < best) { best <- hinge(p); onset <- p }
  }
  df <- n - 4 + 1; lim <- best * (1 + qf(.95, 1, df) / df)
  grid <- sort(unique(c(seq(t[1], t[n - 2], length.out = 4000), onset))); ok <- sapply(grid, hinge) <= lim
  edge <- function(i, j) if (i < 1 || j > length(grid)) NA else uniroot(function(o) hinge(o) - lim, grid[c(i, j)], tol = 1e-10)$root
  lo <- edge(min(which(ok)) - 1, min(which(ok))); hi <- edge(max(which(ok)), max(which(ok)) + 1)
  # Slope: the least deviance over onsets at a fixed slope.
  at_slope <- function(b) min(sapply(grid, function(o) deviance(lm(y - b * pmax(t - o, 0) ~ 1))))
  coefs <- coef(lm(y ~ pmax(t - onset, 0)))
  step_rss <- sapply(3:(n - 3), function(k) sum((y[1:k] - mean(y[1:k]))^2) + sum((y[(k + 1):n] - mean(y[(k + 1):n]))^2))
  bic <- function(rss, k) n * (log(2 * pi * rss / n) + 1) + k * log(n)
  list(
    s = s, variance = v, z = (s - sign(s)) / sqrt(v), p = 2 * pnorm(-abs((s - sign(s)) / sqrt(v))), tauB = cor(t, y, method = "kendall"),
    senSlope = median(slopes), senLow = slopes[max(1, floor((N - c95) / 2))], senHigh = slopes[min(N, ceiling((N + c95) / 2) + 1)],
    pettittK = K, pettittAt = at, pettittP = min(1, 2 * exp(-6 * K^2 / (n^3 + n^2))),
    constantBic = BIC(lm(y ~ 1)), stepAt = which.min(step_rss) + 2, stepBic = bic(min(step_rss), 4),
    creepOnset = onset, creepOnsetLow = lo, creepOnsetHigh = hi, creepSlope = unname(coefs[2]), creepLevel = unname(coefs[1]),
    creepRss = best, creepBic = bic(best, 4), creepLimit = lim, profile = at_slope
  )
}
show <- function(name, what, t, y, last) {
  r <- study(t, y)
  b <- r$creepSlope
  f <- function(x) r$profile(x) - r$creepLimit
  w <- abs(b)
  slopeLow <- uniroot(f, c(b - 3 * w, b), tol = 1e-6 * w)$root; slopeHigh <- uniroot(f, c(b, b + 3 * w), tol = 1e-6 * w)$root
  r$profile <- NULL
  cat(sprintf(' "%s": {\n  "what": "%s",\n  "days": %s,\n  "values": %s', name, what, g(t), g(y)))
  for (k in names(r)) cat(sprintf(',\n  "%s": %s', k, if (is.na(r[[k]])) "null" else n1(r[[k]])))
  cat(sprintf(',\n  "creepSlopeLow": %s,\n  "creepSlopeHigh": %s\n }%s\n', n1(slopeLow), n1(slopeHigh), if (last) "" else ","))
}
cat(sprintf('{\n "source": "R %s.%s, datasets and stats; made by drift-series.R",\n', R.version$major, R.version$minor))
show("nhtemp", "R datasets::nhtemp, mean yearly temperature in degrees F at New Haven, 1912 to 1971 (McNeil 1977, Interactive Data Analysis)", as.numeric(time(nhtemp)), as.numeric(nhtemp), FALSE)
show("LakeHuron", "R datasets::LakeHuron, yearly level of Lake Huron in feet, 1875 to 1972 (Brockwell and Davis 1991, Time Series)", as.numeric(time(LakeHuron)), as.numeric(LakeHuron), FALSE)
show("JohnsonJohnson", "R datasets::JohnsonJohnson, quarterly earnings a share in dollars, 1960 to 1980 (Shumway and Stoffer 2000, Time Series Analysis and its Applications)", as.numeric(time(JohnsonJohnson)), as.numeric(JohnsonJohnson), TRUE)
cat("}\n")
