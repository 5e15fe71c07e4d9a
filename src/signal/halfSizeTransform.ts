/** The bins 0 to N/2 of a real transform, split into real and imaginary parts. */
export interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * The spectrum of N real samples from that of N/2 complex ones z[n] = x[2n] + i·x[2n + 1]:
 *
 * X[k] = E[k] + e^(−2πik/N)·O[k], E = (Z[k] + Z*[N/2 − k]) / 2 of the even samples, O = (Z[k] − Z*[N/2 − k]) / 2i of the odd
 *
 * @param bins - Z in pairs, shape N. Not changed.
 * @param turns - cos and −sin of 2πk/N in turn; shape 2N.
 * @see W. H. Press et al., Numerical Recipes, 3rd ed., §12.3.2 (from memory).
 */
export function realSpectrum(bins: Float64Array, turns: Float64Array): Spectrum {
  const points = bins.length / 2;
  const re = new Float64Array(points + 1);
  const im = new Float64Array(points + 1);
  for (let k = 0; k <= points; k++) {
    const at = k === points ? 0 : 2 * k;
    const mirrored = k === 0 ? 0 : 2 * (points - k);
    const oddRe = 0.5 * (bins[at + 1]! + bins[mirrored + 1]!);
    const oddIm = 0.5 * (bins[mirrored]! - bins[at]!);
    const turnRe = turns[2 * k]!;
    const turnIm = turns[2 * k + 1]!;
    re[k] = 0.5 * (bins[at]! + bins[mirrored]!) + (turnRe * oddRe - turnIm * oddIm);
    im[k] = 0.5 * (bins[at + 1]! - bins[mirrored + 1]!) + (turnRe * oddIm + turnIm * oddRe);
  }
  return { re, im };
}

/**
 * The other way: Z[k] = E[k] + i·O[k].
 *
 * @param bins - filled with Z in pairs, shape N.
 */
export function complexBins({ re, im }: Spectrum, turns: Float64Array, bins: Float64Array): void {
  const points = bins.length / 2;
  for (let k = 0; k < points; k++) {
    const mirrored = points - k;
    const unlikeRe = 0.5 * (re[k]! - re[mirrored]!);
    const unlikeIm = 0.5 * (im[k]! + im[mirrored]!);
    const turnRe = turns[2 * k]!;
    const turnIm = turns[2 * k + 1]!;
    // Turned back: by the conjugate.
    const oddRe = turnRe * unlikeRe + turnIm * unlikeIm;
    const oddIm = turnRe * unlikeIm - turnIm * unlikeRe;
    bins[2 * k] = 0.5 * (re[k]! + re[mirrored]!) - oddIm;
    bins[2 * k + 1] = 0.5 * (im[k]! - im[mirrored]!) + oddRe;
  }
}
