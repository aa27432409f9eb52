# Makes published/lme4-mixed-models.csv: what the R package lme4 makes of data with two nested levels.
# Run with: Rscript published/lme4-mixed-models.R (Debian package r-cran-lme4)
# Lines "data|set|group|pass|x|y" and "fit|set|method|group sd|pass sd|residual sd|intercept|slope|se intercept|se slope".
suppressMessages(library(lme4))
set.seed(20261127)
lines <- c(sprintf("# Made by published/lme4-mixed-models.R with lme4 %s, %s.", packageVersion("lme4"), R.version.string))

invented <- function(name, groups, passes, readings, sds) {
  d <- expand.grid(reading = 1:readings, pass = 1:passes, group = 1:groups)
  # An uneven design: some readings are left out.
  d <- d[runif(nrow(d)) > 0.2, ]
  d$x <- ave(rnorm(nrow(d)), d$group, d$pass)
  level <- rnorm(groups, 0, sds[1])[d$group]
  own <- matrix(rnorm(groups * passes, 0, sds[2]), groups)[cbind(d$group, d$pass)]
  d$y <- 1.5 + 0.7 * d$x + level + own + rnorm(nrow(d), 0, sds[3])
  d$x <- signif(d$x, 8)
  d$y <- signif(d$y, 8)
  d$cell <- interaction(d$group, d$pass)
  for (reml in c(TRUE, FALSE)) {
    m <- lmer(y ~ x + (1 | group) + (1 | cell), d, REML = reml,
              control = lmerControl(optCtrl = list(xtol_abs = 1e-12, ftol_abs = 1e-14)))
    v <- as.data.frame(VarCorr(m))
    sd <- function(level) v$sdcor[v$grp == level]
    lines <<- c(lines, paste(c("fit", name, if (reml) "REML" else "ML",
      format(c(sd("group"), sd("cell"), sd("Residual"), fixef(m), sqrt(diag(as.matrix(vcov(m))))), digits = 10, trim = TRUE)),
      collapse = "|"))
  }
  lines <<- c(lines, paste("data", name, d$group, d$pass, format(d$x, digits = 8, trim = TRUE), format(d$y, digits = 8, trim = TRUE), sep = "|"))
}

invented("mild", 14, 3, 4, c(0.5, 0.3, 0.2))
invented("steep", 9, 4, 3, c(1.2, 0.1, 0.4))
writeLines(lines, "published/lme4-mixed-models.csv")
