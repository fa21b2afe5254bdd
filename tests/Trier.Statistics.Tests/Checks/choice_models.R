# Reference values for the choice models: R 4.2.2, BradleyTerry2 1.1-2, qvcalc 1.0.2.
# Rscript choice_models.R shared/checks/data > choice_models.txt
library(BradleyTerry2)
library(qvcalc)
data <- commandArgs(TRUE)[1]
show <- function(name, value) cat(sprintf("%s = %.12g\n", name, value))
d <- read.csv(file.path(data, "bt_citations.csv"))
items <- c("Biometrika", "Comm_Statist", "JASA", "JRSS-B")
d$item1 <- factor(d$item1, items)
d$item2 <- factor(d$item2, items)
fit <- BTm(cbind(win1, win2), item1, item2, data = d)
quasi <- qvcalc(BTabilities(fit))
for (i in 1:4) show(paste("citations qv", i - 1), quasi$qvframe$quasiVar[i])
show("citations qv least error", min(quasi$relerrs))
show("citations qv most error", max(quasi$relerrs))
