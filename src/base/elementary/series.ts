/** sin x = x − x³/3! + x⁵/5! … for |x| ≤ π/4: what follows x¹⁷ is below 10⁻¹⁹. */
export function sineSeries(x: number): number {
  const z = x * x;
  const sum =
    -1 / 6 +
    z *
      (1 / 120 +
        z *
          (-1 / 5040 +
            z *
              (1 / 362880 +
                z *
                  (-1 / 39916800 + z * (1 / 6227020800 + z * (-1 / 1307674368000 + z / 355687428096000))))));
  return x + x * z * sum;
}

/** cos x = 1 − x²/2! + x⁴/4! … for |x| ≤ π/4: what follows x¹⁶ is below 10⁻¹⁷. */
export function cosineSeries(x: number): number {
  const z = x * x;
  const sum =
    1 / 24 +
    z *
      (-1 / 720 +
        z *
          (1 / 40320 +
            z * (-1 / 3628800 + z * (1 / 479001600 + z * (-1 / 87178291200 + z / 20922789888000)))));
  // 1 − z/2 rounds; what it loses is put back.
  const half = z / 2;
  const near = 1 - half;
  return near + (1 - near - half + z * z * sum);
}
