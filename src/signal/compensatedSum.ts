/**
 * Sum that carries the rounding error of every addition along, skipping missing samples.
 *
 * @param samples - shape N, N ≥ 0; NaN marks a missing sample. Not changed.
 * @returns the sum of the present samples; error below 2 ulp of the result plus N²·2⁻¹⁰⁶ of Σ|x|; 0 when there are none.
 * @see A. Neumaier, "Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen",
 * ZAMM 54 (1974), 39–51.
 * @example compensatedSum([1, 1e100, 1, -1e100]) // 2
 */
export function compensatedSum(samples: ArrayLike<number>): number {
  let sum = 0;
  let lost = 0;
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    const next = sum + x;
    lost += Math.abs(sum) >= Math.abs(x) ? sum - next + x : x - next + sum;
    sum = next;
  }
  return sum + lost;
}
