import { firstPeriod } from './firstPeriod.ts';
import { fitHarmonics } from './fitHarmonics.ts';
import type { HarmonicFit } from './harmonicFit.ts';
import { blockMeans, LONG_RECORD, MINIMUM_CYCLES } from './recordParts.ts';
import { moments } from './statistics.ts';

interface Fundamental {
  /** Radians a sample. */
  readonly omega: number;
  /** Periods in the record. */
  readonly cycles: number;
}

/** Why a record has no fundamental. */
export type NoFundamental =
  /** All samples are the same. */
  | 'constant'
  /** Nothing repeats. */
  | 'no period'
  /** Something repeats, under MINIMUM_CYCLES times. */
  | 'too short'
  /** Under eight samples a period. */
  | 'too coarse';

/** Samples a cycle that are enough to look at. */
const LOOK_SAMPLES = 128;

/**
 * The fundamental of a periodic record of any shape, ready to start a full harmonic fit.
 *
 * A first look finds the lag at which the wave repeats; low-order fits on a few cycles, then on twice as
 * many up to the whole record, sharpen it. Then the orders that carry energy say whether the lag was a
 * multiple of the true period.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param startOmega - radians a sample, good to a few per cent, instead of the first look.
 * @param isLook - true for means of blocks of a long record, which is folded throughout.
 * @returns the fundamental, or why there is none, with the number of periods seen where that can be said.
 */
export function findFundamental(
  samples: Float64Array,
  startOmega?: number,
  isLook = false,
): Fundamental | { readonly none: NoFundamental; readonly cycles: number | null } {
  if (isConstant(samples)) return { none: 'constant', cycles: null };
  const guess =
    startOmega === undefined
      ? firstPeriod(samples)
      : { periodSamples: (2 * Math.PI) / startOmega, mismatch: 0 };
  // Half of the difference between unrelated stretches: real waves with heavy ripple stay under 0.2.
  if (guess === null || guess.mismatch > 0.5) return { none: 'no period', cycles: null };
  if (guess.periodSamples < 8) return { none: 'too coarse', cycles: null };
  const isLong = samples.length >= LONG_RECORD;
  const blockLength = isLong ? Math.floor(guess.periodSamples / LOOK_SAMPLES) : 1;
  if (blockLength > 1) {
    const thinned = blockMeans(samples, blockLength);
    const found = findFundamental(thinned, (2 * Math.PI * blockLength) / guess.periodSamples, true);
    return 'none' in found
      ? found
      : {
          omega: found.omega / blockLength,
          cycles: (found.cycles * samples.length) / (thinned.length * blockLength),
        };
  }
  const refined = refine(samples, (2 * Math.PI) / guess.periodSamples, isLook ? 0 : FOLDED_FROM);
  if (refined === null) {
    const seen = samples.length / guess.periodSamples;
    return seen < MINIMUM_CYCLES ? { none: 'too short', cycles: seen } : { none: 'no period', cycles: null };
  }
  const omega = refined.omega * commonOrder(refined);
  const cycles = (omega * samples.length) / (2 * Math.PI);
  // Half a sample of tolerance: 1.3 cycles rarely make a whole number of samples.
  if (cycles < MINIMUM_CYCLES - omega / (2 * Math.PI)) return { none: 'too short', cycles };
  const periodSamples = (2 * Math.PI) / omega;
  if (periodSamples < 8) return { none: 'too coarse', cycles: null };
  if (fundamentalShare(refined) < 0.12) {
    // The first look's lag is the better one of pulses narrower than the fit's eight orders can tell.
    const unlike = startOmega === undefined ? guess.mismatch : periodMismatch(samples, periodSamples);
    const isSure = cycles >= SURE_CYCLES && unlike < SURE_MISMATCH && isPulseTrain(refined);
    if (!isSure) return { none: 'no period', cycles: null };
  }
  if (!repeatIsSeen(samples, periodSamples) && oddShare(refined) < 0.9)
    return { none: 'no period', cycles: null };
  return { omega, cycles };
}

function isConstant(samples: Float64Array): boolean {
  let first = Number.NaN;
  for (const x of samples) {
    if (Number.isNaN(x)) continue;
    if (Number.isNaN(first)) first = x;
    else if (x !== first) return false;
  }
  return true;
}

const LOOK_ORDERS = 8;

/** Samples from which folded sums are the faster ones. */
const FOLDED_FROM = 2 ** 10;

function refine(samples: Float64Array, start: number, foldedFrom: number): HarmonicFit | null {
  let omega = start;
  let fit: HarmonicFit | null = null;
  let length = Math.min(samples.length, Math.ceil((4 * 2 * Math.PI) / start));
  for (;;) {
    const from = (samples.length - length) >> 1;
    const section = samples.subarray(from, from + length);
    // The first, rough start climbs from the sine alone; a longer stretch starts from the shorter one's frequency.
    for (const orders of fit === null ? [1, 3, LOOK_ORDERS] : [LOOK_ORDERS]) {
      const usable = Math.min(orders, Math.floor((0.45 * 2 * Math.PI) / omega));
      const next = fitHarmonics(section, { orders: usable, omega, folded: section.length > foldedFrom });
      // A frequency that runs away from the repeated lag means that the repeat was chance.
      if (next === null || Math.abs(next.omega / start - 1) > 0.1) continue;
      fit = next;
      omega = next.omega;
    }
    if (fit === null || length === samples.length) return fit;
    length = Math.min(samples.length, 2 * length);
  }
}

/** Amplitude squared of order k of a fit. */
const power = (fit: HarmonicFit, k: number): number => fit.cosine[k - 1]! ** 2 + fit.sine[k - 1]! ** 2;

/**
 * The order m of which all orders that carry energy are multiples: 1 for a true fundamental, 2 or 3 where
 * the lag spanned two or three periods.
 */
function commonOrder(fit: HarmonicFit): number {
  const orders = Array.from(fit.cosine, (_, i) => i + 1);
  const total = orders.reduce((sum, k) => sum + power(fit, k), 0);
  for (let m = Math.floor(orders.length / 2); m > 1; m--) {
    const others = orders.filter((k) => k % m !== 0).reduce((sum, k) => sum + power(fit, k), 0);
    if (others < 0.01 * total && power(fit, m) > 0.1 * total) return m;
  }
  return 1;
}

/**
 * True where the stretches that a period apart are compared hold more than a plateau. A single pulse repeats
 * too, as far as its flat ends go.
 */
function repeatIsSeen(samples: Float64Array, periodSamples: number): boolean {
  const overlap = Math.floor(samples.length - periodSamples);
  if (overlap < 2) return false;
  const deviation = (part: Float64Array): number =>
    part.every(Number.isNaN) ? 0 : moments(part).standardDeviation;
  const compared = Math.max(deviation(samples.subarray(0, overlap)), deviation(samples.subarray(-overlap)));
  return compared > 0.2 * deviation(samples);
}

/** Share of the power in odd orders: near one where the second half of a cycle mirrors the first. */
function oddShare(fit: HarmonicFit): number {
  let [odd, all] = [0, 0];
  for (let k = 1; k <= fit.cosine.length; k++) {
    all += power(fit, k);
    if (k % 2 === 1) odd += power(fit, k);
  }
  return odd / all;
}

/** Periods whose likeness is no chance. */
const SURE_CYCLES = 3;
/** Squared difference from itself one period later: noise of a tenth of the swing's standard deviation makes 0.01. */
const SURE_MISMATCH = 0.05;

/**
 * True where short pulses between long rests repeat: of a pulse of a share d of the period the fundamental carries no
 * more than 2·d of the power, as all orders up to 1/d are nearly as strong, but none of them is stronger. Of a burst,
 * and of what rings, an order of its own is.
 */
function isPulseTrain(fit: HarmonicFit): boolean {
  for (let k = 2; k <= fit.cosine.length; k++) if (power(fit, k) > STRONGER * power(fit, 1)) return false;
  return true;
}

/** Of noise and edges between samples, an order may seem so much stronger than a lower one that it equals. */
const STRONGER = 1.2;

/**
 * Mean squared difference between a record and itself a period later over twice its variance. A period that is no whole
 * number of samples moves edges by half a sample at most: the better of the two neighbours counts at each point.
 */
function periodMismatch(samples: Float64Array, periodSamples: number): number {
  const lag = Math.floor(periodSamples);
  let [sum, count] = [0, 0];
  for (let n = 0; n + lag + 1 < samples.length; n++) {
    const here = samples[n]!;
    const square = Math.min((samples[n + lag]! - here) ** 2, (samples[n + lag + 1]! - here) ** 2);
    if (Number.isNaN(square)) continue;
    sum += square;
    count++;
  }
  return count === 0 ? 1 : sum / count / (2 * moments(samples).standardDeviation ** 2);
}

/** Share of the record's AC power that the fundamental carries, 0 to about 1. */
function fundamentalShare(fit: HarmonicFit): number {
  const strongest = power(fit, commonOrder(fit)) / 2;
  let all = fit.residualDeviation ** 2;
  for (let k = 1; k <= fit.cosine.length; k++) all += power(fit, k) / 2;
  return strongest / all;
}
