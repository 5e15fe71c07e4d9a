import { usualPeak } from '../usualPeak.ts';

/** What lies between two long rests at zero, in samples: from ≤ n < to. */
export interface LitStretch {
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
export function litStretches(samples: Float64Array): readonly LitStretch[] {
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
