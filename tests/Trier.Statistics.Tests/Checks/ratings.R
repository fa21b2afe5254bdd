# Reference values for ratings: R 4.2.2, t.test with unequal variances.
# Rscript ratings.R > ratings.txt
show <- function(name, value) cat(sprintf("%s = %.12g\n", name, value))
right <- c(7, 8, 6, 9, 7, 8, 7, 6, 8)
salty <- c(5, 4, 6, 3, 7, 5, 2, 6)
show("drop", mean(right) - mean(salty))
interval <- t.test(right, salty, conf.level = 0.90)$conf.int
show("drop low", interval[1])
show("drop high", interval[2])
