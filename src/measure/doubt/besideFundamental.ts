import { cos, exp, hypot, sin } from '../../base/elementary.ts';
import type { HarmonicFit } from '../../signal/harmonicFit.ts';
import { RUN_SAMPLES } from '../../signal/recordParts.ts';

/** A line beside the fundamental. */
export interface BesideLine {
  /** Radians a sample from the fundamental, with its sign. */
  readonly apartOmega: number;
  /** Its amplitude over the fundamental's. */
  readonly ratio: number;
}

interface BesideFundamental {
  /** Standard deviation that what is left there gives the frequency beyond white noise, radians a sample; 0: none. */
  readonly omegaDeviation: number;
  readonly line: BesideLine | null;
}

/** Moments of the residual around the fundamental: Legendre polynomials of degree 0 to this over the record. */
const DEGREES = 5;
/** Lines tried, in cycles over the record apart from the fundamental: half a line's width to the next but one. */
const APART = [0.12, 0.2, 0.3, 0.45, 0.65, 0.9, 1.2, 1.6, 2.1].flatMap((d) => [-d, d]);
/** A line beside the fundamental is about this part of it at most: weights fall as a normal curve does. */
const USUAL_RATIO = 0.04;
/** Of χ² with nine degrees of freedom: one white record in a thousand. */
const CHANCE = 27.88;

/**
 * What the residual holds within the record's resolution of the fundamental, and what a line there would have done to
 * the frequency: a line closer than one cycle over the record goes mostly into the fundamental's own size, phase and
 * frequency, and only its remainder shows.
 *
 * For lines at several distances the remainder is fitted; each counts by how well it explains it and how usual its size
 * is, and the deviation is the root of the weighted mean of the squared pulls.
 *
 * @param noiseRatio - of the noise there over the fit's white noise.
 */
export function besideFundamental(fit: HarmonicFit, noiseRatio: number): BesideFundamental {
  const amplitude = hypot(fit.cosine[0]!, fit.sine[0]!);
  const { seen, weight } = moments(fit, amplitude);
  // In units of one deviation of white noise in a moment's part.
  const sigma = (noiseRatio * fit.residualDeviation * Math.SQRT1_2 * weight) / amplitude;
  const values = observed(seen);
  const power = values.reduce((sum, x) => sum + x * x, 0);
  if (!(sigma > 0) || power < CHANCE * sigma * sigma) return { omegaDeviation: 0, line: null };
  const halfSpan = fit.residual.length / 2;
  const tried = APART.map((apart) => ({ apart, ...lineAt(values, apart) }));
  const best = tried.reduce((a, b) => (b.left < a.left ? b : a));
  const variance = Math.max(sigma * sigma, best.left / (values.length - 2));
  let [sum, squares] = [0, 0];
  for (const { left, size, pull } of tried) {
    const likely = exp(-(left - best.left) / (2 * variance) - (size / USUAL_RATIO) ** 2 / 2);
    sum += likely;
    squares += likely * pull * pull;
  }
  // Pull is of the first moment across; φ = δω·u has √(1/3)·δω·halfSpan of it.
  const perMoment = Math.sqrt(3) / halfSpan;
  const level = Math.sqrt(Math.max(0, power / values.length - sigma * sigma));
  const ofLine = sum > 0 ? Math.sqrt(squares / sum) : 0;
  return {
    omegaDeviation: perMoment * Math.max(ofLine, level),
    line: { apartOmega: (Math.PI * best.apart) / halfSpan, ratio: best.size },
  };
}

interface Moment {
  /** In phase with the fundamental: its size. */
  readonly along: number;
  /** Across it: its phase. */
  readonly across: number;
}

/**
 * Mean over the record of residual · e^(−iωu), turned to the fundamental's phase, times the normed Legendre
 * polynomial of each degree; over the amplitude, doubled, so that a change of the fundamental's size by g reads g.
 *
 * @returns `weight`: deviation of |moment| for a residual of white noise of deviation one and amplitude one.
 */
function moments(fit: HarmonicFit, amplitude: number): { seen: Moment[]; weight: number } {
  const { residual, omega } = fit;
  const { length } = residual;
  const period = (2 * Math.PI) / omega;
  // Sixteen means a cycle lose 0.6 % of the fundamental's size; 64 stay clear of all that counts.
  const block = Math.max(1, Math.floor(period / 64));
  const [re, im] = [new Float64Array(DEGREES + 1), new Float64Array(DEGREES + 1)];
  const stretch = block * Math.max(1, Math.floor(RUN_SAMPLES / block));
  const room = new Float64Array(stretch);
  let count = 0;
  const [turnRe, turnIm] = [cos(omega * block), sin(omega * block)];
  for (let from = 0; from < length; from += stretch) {
    const to = Math.min(length, from + stretch);
    const left = residual.stretch(from, to, room);
    // Middle of the first block; from there each block turns as far, but the last of the record.
    const first = omega * (from + (block - length) / 2);
    let [atRe, atIm] = [cos(first), sin(first)];
    for (let start = 0; start < left.length; start += block) {
      const end = Math.min(left.length, start + block);
      let sum = 0;
      for (let n = start; n < end; n++) {
        const r = left[n]!;
        if (Number.isNaN(r)) continue;
        sum += r;
        count++;
      }
      addMoments(re, im, (2 * (from + (start + end) / 2)) / length - 1, sum * atRe, sum * atIm);
      const next = atRe * turnRe - atIm * turnIm;
      atIm = atRe * turnIm + atIm * turnRe;
      atRe = next;
    }
  }
  const scale = 2 / Math.max(1, count) / amplitude;
  const [cosine, sine] = [fit.cosine[0]! / amplitude, fit.sine[0]! / amplitude];
  const seen = Array.from(re, (c, degree) => ({
    along: scale * (c * cosine + im[degree]! * sine),
    // Phase forward by θ adds θ·sine to the cosine part and −θ·cosine to the sine part.
    across: scale * (c * sine - im[degree]! * cosine),
  }));
  return { seen, weight: 2 / Math.sqrt(Math.max(1, count)) };
}

/** Without degree 0 and the first across, which the fit's size, phase and frequency take up. */
function observed(seen: readonly Moment[]): readonly number[] {
  return [seen[1]!.along, ...seen.slice(2).flatMap(({ along, across }) => [along, across])];
}

/** A line so many cycles over the record away, fitted to what is observed: its size, what it leaves, and its pull. */
function lineAt(
  values: readonly number[],
  apart: number,
): { readonly left: number; readonly size: number; readonly pull: number } {
  const ofLine = lineMoments(apart);
  // A line a·e^(iθ)·e^(i2πδx): columns of a·cos θ and of a·sin θ.
  const first = observed(ofLine);
  const second = observed(ofLine.map(({ along, across }) => ({ along: -across, across: along })));
  const dot = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, x, i) => sum + x * b[i]!, 0);
  const [aa, ab, bb] = [dot(first, first), dot(first, second), dot(second, second)];
  const [ay, by] = [dot(first, values), dot(second, values)];
  const determinant = aa * bb - ab * ab;
  const [p, q] = [(bb * ay - ab * by) / determinant, (aa * by - ab * ay) / determinant];
  const left = Math.max(0, dot(values, values) - p * ay - q * by);
  const { along, across } = ofLine[1]!;
  return { left, size: hypot(p, q), pull: Math.abs(p * across + q * along) };
}

/** Moments of e^(iπδx) over −1 ≤ x ≤ 1, by 64 points of the midpoint rule: off by 1e-3 at most for |δ| ≤ 2.1. */
function lineMoments(apart: number): Moment[] {
  const points = 64;
  const [re, im] = [new Float64Array(DEGREES + 1), new Float64Array(DEGREES + 1)];
  for (let n = 0; n < points; n++) {
    const x = (2 * n + 1) / points - 1;
    const [c, s] = [cos(Math.PI * apart * x), sin(Math.PI * apart * x)];
    addMoments(re, im, x, c / points, s / points);
  }
  return Array.from(re, (along, degree) => ({ along, across: im[degree]! }));
}

/** Adds a value at −1 ≤ x ≤ 1 times the polynomial of each degree, normed to a mean square of one. */
function addMoments(re: Float64Array, im: Float64Array, x: number, valueRe: number, valueIm: number): void {
  let [before, here] = [0, 1];
  for (let degree = 0; degree <= DEGREES; degree++) {
    const norm = Math.sqrt(2 * degree + 1) * here;
    re[degree]! += norm * valueRe;
    im[degree]! += norm * valueIm;
    const next = ((2 * degree + 1) * x * here - degree * before) / (degree + 1);
    before = here;
    here = next;
  }
}
