# Serving order on the demo's liking by separate code, numpy 1.24: residuals by alternating means, orders dealt anew over the tasters.
# python3 serving_order.py > serving_order.txt
import csv, os
import numpy as np

here = os.path.dirname(os.path.abspath(__file__))
rows = list(csv.DictReader(open(os.path.join(here, "data", "demo_ballots.csv"))))
tasters = sorted({r["taster"] for r in rows})
codes = sorted({r["code"] for r in rows})
value = np.full((len(tasters), len(codes)), np.nan)
position = np.full(value.shape, -1)
for r in rows:
    t, c = tasters.index(r["taster"]), codes.index(r["code"])
    position[t, c] = int(r["position"]) - 1
    if r["liking_1to9"]:
        value[t, c] = float(r["liking_1to9"])
left = value.copy()
for _ in range(3000):
    left -= np.nanmean(left, 1, keepdims=True)
    left -= np.nanmean(left, 0, keepdims=True)

def statistic(order):
    total = first = 0.0
    for p in range(len(codes)):
        here = (order == p) & ~np.isnan(left)
        mean = left[here].mean() if here.any() else 0.0
        total += here.sum() * mean * mean
        first = mean if p == 0 else first
    return total, first

rng = np.random.default_rng(20250830)
seen = statistic(position)
draws = 40_000
hits = np.zeros(2)
for _ in range(draws):
    total, first = statistic(position[rng.permutation(len(tasters))])
    hits += total >= seen[0] - 1e-9, abs(first) >= abs(seen[1]) - 1e-9
print(f"statistic = {seen[0]:.10g}")
print(f"first = {seen[1]:.10g}")
print(f"p = {hits[0] / draws:.6g}")
print(f"first p = {hits[1] / draws:.6g}")
