# Reference values for the studentized range: R 4.2.2, ptukey and qtukey.
# Rscript studentized_range.R > studentized_range.csv
cat("kind,first,groups,freedom,value\n")
for (k in c(2, 3, 4, 5, 6, 8, 10, 15, 20)) for (f in c(2, 3, 5, 10, 20, 40, 120, 1000, Inf)) {
  for (q in c(0.1, 0.5, 1, 2, 3, 4, 5, 7, 10)) cat(sprintf("tail,%g,%d,%g,%.12g\n", q, k, f, ptukey(q, k, f, lower.tail = FALSE)))
  for (a in c(0.2, 0.1, 0.05, 0.01, 0.001)) cat(sprintf("quantile,%g,%d,%g,%.12g\n", a, k, f, qtukey(a, k, f, lower.tail = FALSE)))
}
