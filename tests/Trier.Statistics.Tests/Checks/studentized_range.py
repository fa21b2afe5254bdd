# Second reference for the studentized range where R's ptukey is coarse (few degrees of freedom): the textbook double integral by plain trapezoids, numpy 1.24.
# python3 studentized_range.py > studentized_range_few.csv
import numpy as np
from scipy.special import ndtr, gammaln

z = np.linspace(-9, 9, 361)
phi = np.exp(-z * z / 2) / np.sqrt(2 * np.pi)
under = ndtr(z)

def known(q, k):
    far = ndtr(z[None, :] - q[:, None])
    inside = np.maximum(0, under[None, :] - far)
    return k * np.trapz(far * sum(under[None, :] ** i * inside ** (k - 2 - i) for i in range(k - 1)) * phi, z)

print("kind,first,groups,freedom,value")
for k in (2, 3, 4, 5, 6, 8, 10, 15, 20):
    for f in (2, 3, 5, 10):
        u = np.linspace(-18, 2, 1001)
        density = np.exp(f / 2 * np.log(f / 2) - gammaln(f / 2) + np.log(2) + f * u - f / 2 * np.exp(2 * u))
        for q in (0.1, 0.5, 1, 2, 3, 4, 5, 7, 10):
            print(f"tail,{q:g},{k},{f},{np.trapz(density * known(q * np.exp(u), k), u):.12g}")
