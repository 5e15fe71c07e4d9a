"""Reference values for normalTail.test.ts: scipy beside 40-digit mpmath, printed as TypeScript rows."""
import mpmath
from scipy.stats import norm

mpmath.mp.dps = 40
points = [-8, -3, -2.5, -1.4, -0.1, 0, 1e-9, 0.5, 1, 1.4, 2, 2.4999, 2.5, 2.6, 3, 4, 6, 10, 20, 36]
for x in points:
    exact = mpmath.erfc(mpmath.mpf(x) / mpmath.sqrt(2)) / 2
    assert abs(norm.sf(x) / float(exact) - 1) < 1e-12, x
    print(f"  [{x}, {float(exact)!r}],")
