import { findFundamental } from './findFundamental.ts';
import { blockMeans, LONG_RECORD } from './recordParts.ts';
import { usualPeak } from './strayValues.ts';

/** Enough for 250 cycles of 80 samples; a longer stretch is averaged down to it for this look. */
const LOOK_LENGTH = 20_000;
/** Of a long record a shorter look is enough, as it may be looked at in shorter stretches. */
const LONG_LOOK_LENGTH = 8192;
/** The shortest stretch looked at is a thirty-second of the record. */
const HALVINGS = 5;
/** Stretches looked at of one length. */
const LOOKS = 4;

/** Cycles that make a supply of what swings to one side only, as half a wave does. */
const ONE_SIDED_CYCLES = 5;
/** Periods that a rest takes where one-sided pulses beside it are waves of their own. */
const RESTS = 3;

/** Stretches with voltage that are looked at, the longest first. */
const STRETCHES = 4;

/**
 * The fundamental of a record that may change on its way: of the longest stretch with voltage where it rests at zero
 * for long; else of the whole where it repeats throughout, else of a half, quarter and so on that repeats.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns radians a sample, good to a few per cent anywhere in the record; null where nothing repeats.
 */
export function roughFundamental(samples: Float64Array): number | null {
  const lit = litStretches(samples);
  // Bursts may come back as regularly as their wave does.
  return ofStretches(samples, lit, true) ?? ofParts(samples) ?? ofStretches(samples, lit, false);
}

/** @param isSure - whether only what can't be a part of something slower that repeats is taken. */
function ofStretches(
  samples: Float64Array,
  stretches: readonly LitStretch[],
  isSure: boolean,
): number | null {
  for (const { from, to, isBalanced, restSamples } of stretches.slice(0, STRETCHES)) {
    const blockLength = Math.max(1, Math.floor((to - from) / LOOK_LENGTH));
    const stretch = blockMeans(samples.subarray(from, to), blockLength);
    const found = findFundamental(stretch);
    if ('none' in found) continue;
    const omega = found.omega / blockLength;
    if (isBalanced) return omega;
    // A few pulses to one side are a signal's, or half of a switched cycle, which rests for a few of them at most.
    const rests = (restSamples * omega) / (2 * Math.PI);
    if (found.cycles >= ONE_SIDED_CYCLES && (!isSure || rests > RESTS)) return omega;
  }
  return null;
}

function ofParts(samples: Float64Array): number | null {
  const isLong = samples.length >= LONG_RECORD;
  const [lookLength, most] = isLong ? [LONG_LOOK_LENGTH, HALVINGS + 1] : [LOOK_LENGTH, HALVINGS];
  for (let halvings = 0; halvings <= most; halvings++) {
    const parts = 2 ** halvings;
    const length = Math.floor(samples.length / parts);
    const blockLength = Math.max(1, Math.floor(length / lookLength));
    const stride = Math.max(1, parts / LOOKS);
    for (let part = 0; part < parts && length >= 16; part += stride) {
      const stretch = blockMeans(samples.subarray(part * length, (part + 1) * length), blockLength);
      if (stretch.every(Number.isNaN)) continue;
      const found = findFundamental(stretch, undefined, isLong);
      if ('omega' in found) return found.omega / blockLength;
    }
  }
  return null;
}

/** What lies between two long rests at zero, in samples: from ≤ n < to. */
interface LitStretch {
  readonly from: number;
  readonly to: number;
  /** True where the wave in it swings to both sides of zero. */
  readonly isBalanced: boolean;
  /** The shortest of the long rests of this record. */
  readonly restSamples: number;
}

/** Of the usual peak: below it the record rests at zero, or crosses it. */
const REST_RATIO = 0.15;
/** How many times longer than the next shorter rest the shortest of the long rests is. */
const LONGER = 2.5;
/** Of the record: long rests of less in all hide nothing. */
const LEAST_SHARE = 0.05;
/** Of a stretch's lit samples that lie on its rarer side: less is a pulse or half of a switched cycle. */
const LEAST_SIDE = 0.1;

/**
 * The stretches with voltage of a record that is without it for long: before a start, after a cut-off, between bursts.
 *
 * A wave takes some time through zero in each half cycle, or dwells there, always about as long. Sorted by length, its
 * own rests and the long ones part at the largest ratio of one to the next. No period need be known for that.
 *
 * @param samples - shape N; NaN marks a missing sample, which is no rest. Not changed.
 * @returns longest first; empty where no rest is far longer than the others, or they are a small part of the record.
 */
function litStretches(samples: Float64Array): readonly LitStretch[] {
  const level = REST_RATIO * usualPeak(samples);
  const rests = restsOf(samples, level);
  const least = longRest(rests, samples.length);
  const long = rests.filter(({ from, to }) => to - from >= least);
  const share = long.reduce((sum, { from, to }) => sum + to - from, 0);
  if (share < LEAST_SHARE * samples.length) return [];
  const lit: LitStretch[] = [];
  let from = 0;
  for (const rest of [...long, { from: samples.length, to: samples.length }]) {
    if (rest.from > from)
      lit.push({
        from,
        to: rest.from,
        isBalanced: isBalanced(samples, from, rest.from, level),
        restSamples: least,
      });
    from = rest.to;
  }
  return lit.sort((a, b) => b.to - b.from - (a.to - a.from));
}

interface Rest {
  readonly from: number;
  readonly to: number;
}

function restsOf(samples: Float64Array, level: number): readonly Rest[] {
  const rests: Rest[] = [];
  for (let n = 0; n < samples.length; n++) {
    const from = n;
    while (n < samples.length && Math.abs(samples[n]!) < level) n++;
    if (n > from) rests.push({ from, to: n });
  }
  return rests;
}

/** The length from which on rests are long ones; infinite where none stands out. */
function longRest(rests: readonly Rest[], sampleCount: number): number {
  const lengths = Float64Array.from(rests, ({ from, to }) => to - from).sort();
  // A square wave may have no sample near zero but those of the one long rest.
  if (lengths.length === 1) return LEAST_SHARE * sampleCount;
  let [least, most] = [Number.POSITIVE_INFINITY, LONGER];
  for (let i = 1; i < lengths.length; i++) {
    // Two more: an edge that falls between two samples makes a rest of none, one or two.
    const ratio = (lengths[i]! + 2) / (lengths[i - 1]! + 2);
    if (ratio > most) [least, most] = [lengths[i]!, ratio];
  }
  return least;
}

function isBalanced(samples: Float64Array, from: number, to: number, level: number): boolean {
  let [above, below] = [0, 0];
  for (let n = from; n < to; n++) {
    if (samples[n]! >= level) above++;
    else if (samples[n]! <= -level) below++;
  }
  return Math.min(above, below) > LEAST_SIDE * (above + below);
}
