# Makes floor.json: run in this folder as `Rscript floor.R > floor.json` (R 4.2.2, no further packages).
g <- function(v) paste0("[",paste(sprintf("%.15g",v),collapse=","),"]")
cat(sprintf('{\n "source": "R %s.%s",\n', R.version$major,R.version$minor))

# Restricted likelihood written out with whole covariance matrices, one block a group.
reml <- function(y, X, h, v, group) {
  n <- length(y); p <- ncol(X); same <- outer(group, group, "==")
  at <- function(logratio) {
    V <- diag(v) + exp(logratio) * outer(h,h) * same
    Vi <- solve(V); A <- t(X)%*%Vi%*%X; b <- solve(A, t(X)%*%Vi%*%y); r <- y - X%*%b
    s2 <- drop(t(r)%*%Vi%*%r)/(n-p)
    list(crit=(n-p)*log(s2)+as.numeric(determinant(V)$modulus)+as.numeric(determinant(A)$modulus), b=drop(b), cov=s2*solve(A), s2=s2)
  }
  o <- optimize(function(l) at(l)$crit, c(-25,10), tol=1e-10)
  f <- at(o$minimum); f$tau2 <- exp(o$minimum)*f$s2; f
}
h <- Orange$age/100; v <- 1 + h/4; y <- Orange$circumference
f <- reml(y, cbind(1,h), h, v, as.character(Orange$Tree))
cat(' "orange": {\n  "source": "R datasets::Orange (Draper and Smith 1998, Applied Regression Analysis; growth of five orange trees); restricted likelihood with whole matrices; age in hundreds of days, variances 1 + age/4",\n')
cat(sprintf('  "tree": [%s],\n', paste0('"',Orange$Tree,'"',collapse=",")))
cat('  "age":',g(Orange$age),',\n  "circumference":',g(y),',\n  "coefficients":',g(f$b),',\n  "covariance":',g(as.vector(f$cov)),',\n')
cat(sprintf('  "slopeVariance": %.15g,\n  "varianceFactor": %.15g\n },\n', f$tau2, f$s2))

cat(' "holm": {\n  "source": "p.adjust(p, \\"holm\\")",\n  "cases": [\n')
cases <- list(c(.01,.02,.03,.04,.05), c(.04,.001,.3,.02,.02,.9), c(.5,.6), c(.049))
cat(paste(sapply(cases, function(p) sprintf('   { "p": %s, "adjusted": %s }', g(p), g(p.adjust(p,"holm")))), collapse=",\n"), '\n  ]\n },\n')

cat(' "kernels": {\n  "source": "power.prop.test and power.t.test, two-sided, level 0.05",\n  "shares": [\n')
sh <- list(c(.5,.75,.9), c(.1,.2,.8), c(.03,.08,.8), c(.1,.15,.8), c(.02,.05,.95))
cat(paste(sapply(sh, function(q) sprintf('   { "from": %g, "to": %g, "power": %g, "n": %.12g }', q[1],q[2],q[3], power.prop.test(p1=q[1],p2=q[2],power=q[3],tol=1e-12)$n)), collapse=",\n"), '\n  ],\n  "lengths": [\n')
le <- list(c(1,1,.9), c(.05,.18,.8), c(.1,.2,.8), c(.025,.15,.95))
cat(paste(sapply(le, function(q) sprintf('   { "difference": %g, "spread": %g, "power": %g, "n": %.12g }', q[1],q[2],q[3], power.t.test(delta=q[1],sd=q[2],power=q[3],tol=1e-12)$n)), collapse=",\n"), '\n  ]\n },\n')

m <- lm(dist~speed, cars); t975 <- qt(.975, m$df.residual)
touch <- function(x, y0, sign) { q <- predict(m, data.frame(speed=x), se.fit=TRUE); q$fit + sign*t975*q$se.fit - y0 }
y0 <- 60
cat(' "inverse": {\n  "source": "datasets::cars, lm(dist ~ speed): the speeds at which the 95 % limits of the mean line reach 60, by uniroot",\n')
cat(sprintf('  "speed": %s,\n  "distance": %s,\n  "at": %g,\n', g(cars$speed), g(cars$dist), y0))
cat(sprintf('  "estimate": %.15g,\n  "low": %.12g,\n  "high": %.12g\n }\n}\n', (y0-coef(m)[1])/coef(m)[2],
  uniroot(touch, c(5,25), y0=y0, sign=1, tol=1e-12)$root, uniroot(touch, c(5,40), y0=y0, sign=-1, tol=1e-12)$root))
