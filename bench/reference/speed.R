# The same work in R, timed inside the process after a warm-up. Prints "name <tab> median seconds". Fast work is repeated inside one timing.
# Usage: Rscript speed.R FOLDER; the folder receives the data that the others fit too.
suppressPackageStartupMessages({ library(BradleyTerry2); library(ordinal) })
folder <- commandArgs(TRUE)[1]
median_of <- function(f, repeats = 1, runs = 9) {
  for (i in 1:2) f()
  # Processor time, which other programs on the machine do not lengthen; it ticks in milliseconds, hence the repeats.
  median(sapply(1:runs, function(i) { t <- system.time(for (r in 1:repeats) f()); (t[["user.self"]] + t[["sys.self"]]) / repeats }))
}
say <- function(name, seconds) cat(name, "\t", format(seconds, digits = 6, scientific = TRUE), "\n", sep = "")

set.seed(7)
table1000 <- matrix(rnorm(5000), 1000, 5)
say("friedman 1000x5 R", median_of(function() friedman.test(table1000), 5))

data(baseball)
write.csv(baseball, file.path(folder, "baseball.csv"), row.names = FALSE)
say("bradley-terry 7 R", median_of(function() BTm(cbind(home.wins, away.wins), home.team, away.team, data = baseball, id = "team"), 60))

cheese <- read.csv(file.path(folder, "cheese.csv"))
cheese$rating <- factor(cheese$rating, ordered = TRUE)
cheese$additive <- factor(cheese$additive)
fit <- clm(rating ~ additive, weights = count, data = cheese)
cat("# clm logLik", format(as.numeric(logLik(fit)), digits = 10), "\n")
say("proportional odds R", median_of(function() clm(rating ~ additive, weights = count, data = cheese), 30))
