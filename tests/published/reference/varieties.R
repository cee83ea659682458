# Makes varieties.json: run in this folder as `Rscript varieties.R > varieties.json` (R 4.2.2, base packages alone).
g <- function(v) paste0("[", paste(sprintf("%.15g", v), collapse = ","), "]")
bf <- function(y, f) { z <- abs(y - ave(y, f, FUN = median)); a <- anova(lm(z ~ f)); c(a$"F value"[1], a$Df, a$"Pr(>F)"[1]) }
sets <- list(
  InsectSprays = list(y = InsectSprays$count, f = InsectSprays$spray),
  PlantGrowth = list(y = PlantGrowth$weight, f = PlantGrowth$group),
  chickwts = list(y = chickwts$weight, f = chickwts$feed))
cat('{\n "source": "R 4.2.2, base packages",\n "brownForsythe": [\n')
cat(paste(sapply(names(sets), function(n) { s <- sets[[n]]
  sprintf('  {"set": "%s", "group": %s, "y": %s, "fAndDfAndP": %s}', n, g(as.integer(s$f)), g(s$y), g(bf(s$y, s$f))) }), collapse = ",\n"))
p <- c(0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240, 0.4262, 0.5719, 0.6528, 0.7590, 1)
set.seed(5); q <- round(runif(12)^3, 6)
cat('\n ],\n "adjusted": [\n')
cat(paste(sapply(list(p, q), function(v) sprintf('  {"p": %s, "benjaminiHochberg": %s, "holm": %s}', g(v), g(p.adjust(v, "BH")), g(p.adjust(v, "holm")))), collapse = ",\n"))
a <- sleep$extra[1:10]; b <- sleep$extra[11:20]; v <- var.test(a, b); w <- t.test(a, b)
cat('\n ],\n "sleep": {"first":', g(a), ', "second":', g(b), ',\n  "varianceRatio":', g(c(v$estimate, v$conf.int)), ', "welch":', g(c(w$estimate[1] - w$estimate[2], w$conf.int, w$p.value)), '},\n')
# Student t prediction of the next value: predict(lm(y ~ 1), interval = "prediction").
y <- morley$Speed[morley$Expt == 1]; pr <- predict(lm(y ~ 1), data.frame(1), interval = "prediction", level = 0.9)
s <- sd(y) * sqrt(1 + 1/length(y))
cat(' "prediction": {"y":', g(y), ', "level": 0.9, "interval":', g(pr), ', "chance850to1000":', sprintf("%.15g", pt((1000-mean(y))/s, length(y)-1) - pt((850-mean(y))/s, length(y)-1)), '},\n')
# A level for each group: lm(y ~ factor + x).
f <- lm(weight ~ factor(feed) + I(seq_along(weight) %% 7) + I((seq_along(weight) * 3) %% 5), data = chickwts)
n <- nrow(chickwts); f0 <- lm(weight ~ factor(feed), data = chickwts)
ct <- summary(f)$coefficients; k <- nrow(ct)
cat(' "fixedEffects": {"first":', g(seq_len(n) %% 7), ', "second":', g((seq_len(n) * 3) %% 5), ', "coefficients":', g(ct[(k-1):k, 1]), ', "p":', g(ct[(k-1):k, 4]), ', "low":', g(confint(f)[(k-1):k, 1]), ', "jointP":', sprintf("%.15g", anova(f0, f)$"Pr(>F)"[2]), '}\n}\n')
