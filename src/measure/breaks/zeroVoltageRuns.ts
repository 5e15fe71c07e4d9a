import type { SampleRange } from '../../read/capture.ts';

/** A run of samples near zero. */
export interface DarkRun extends SampleRange {
  /** True where the wave on neither side rests at zero for so long; else only the wave on one side doesn't. */
  readonly sure: boolean;
}

/** Of the wave's peak: below it there is no voltage, or the wave crosses zero. */
const DARK_RATIO = 0.15;
/** Of a period: how much longer than the wave's own rests at zero a run must be. 1.5 ms at 50 Hz. */
const LONGER_CYCLES = 0.075;
/** Of a period: a shorter peep of voltage does not end a run. */
const PEEP_CYCLES = 0.02;
/** Of a period: the longest rest at zero that a wave can have of its own, one of short pulses. */
const NATURAL_CYCLES = 0.98;
/** Of the wave's peak: what is larger a period before and after a dark sample, the sample should not be dark. */
const LIT_RATIO = 0.3;
/** Of a period: dark samples that should not be make a run, at least. 0.7 ms at 50 Hz. */
const CONTRARY_CYCLES = 0.035;
/** Periods each side whose longest run tells how long the wave there rests at zero. */
const NEIGHBOURHOOD_CYCLES = 1.1;

/**
 * Runs of samples near zero that last longer than the wave beside them takes through zero, or dwells there, or that
 * stand where it is far from zero a period before and after.
 *
 * @param samples - shape N; NaN marks a missing sample, which is not dark. Not changed.
 * @param periodSamples - > 0.
 * @param peak - of the wave where there is one, in the unit of the samples.
 * @returns ascending. A break over most of a dwell at zero hides in it.
 */
export function zeroVoltageRuns(
  samples: Float64Array,
  periodSamples: number,
  peak: number,
): readonly DarkRun[] {
  const runs = runsNearZero(samples, PEEP_CYCLES * periodSamples, DARK_RATIO * peak);
  const reach = NEIGHBOURHOOD_CYCLES * periodSamples;
  /** The longest rest at zero that the wave has of its own on one side, in samples. */
  const usual = (at: number, side: 1 | -1): number => {
    let longest = 0;
    for (let k = at + side; k >= 0 && k < runs.length; k += side) {
      const { from, to } = runs[k]!;
      if ((side > 0 ? from - runs[at]!.to : runs[at]!.from - to) >= reach) break;
      if (to - from < NATURAL_CYCLES * periodSamples) longest = Math.max(longest, to - from);
    }
    return longest;
  };
  return runs.flatMap((run, i): DarkRun[] => {
    // A wave of several pulses a half cycle rests at zero for several times; the longest comes back every half cycle.
    const [usualBefore, usualAfter] = [usual(i, -1), usual(i, 1)];
    const beyond = run.to - run.from - LONGER_CYCLES * periodSamples;
    const isAtEnd = run.from === 0 || run.to === samples.length;
    const isContrary = (): boolean =>
      contrary(samples, run, periodSamples, LIT_RATIO * peak) > CONTRARY_CYCLES * periodSamples;
    if (beyond > Math.max(usualBefore, usualAfter)) return [{ ...run, sure: true }];
    // All the wave that there is beside a record's end speaks against it.
    if (isAtEnd && isContrary()) return [{ ...run, sure: true }];
    const isDoubted = beyond > Math.min(usualBefore, usualAfter) || isContrary();
    return isDoubted ? [{ ...run, sure: false }] : [];
  });
}

function runsNearZero(samples: Float64Array, peep: number, level: number): SampleRange[] {
  const runs: SampleRange[] = [];
  for (let n = 0; n < samples.length; n++) {
    const from = n;
    while (n < samples.length && Math.abs(samples[n]!) < level) n++;
    if (n === from) continue;
    const open = runs.at(-1);
    const joins = open !== undefined && from - open.to < peep && isPresent(samples, open.to, from);
    if (joins) runs[runs.length - 1] = { from: open.from, to: n };
    else runs.push({ from, to: n });
  }
  return runs;
}

/**
 * How many samples of a run lie far from zero a period before as well as a period after; of one at the record's start or
 * end, in both of the two periods beside it.
 */
function contrary(
  samples: Float64Array,
  { from, to }: SampleRange,
  periodSamples: number,
  level: number,
): number {
  const period = Math.round(periodSamples);
  const [one, other] =
    from === 0 ? [period, 2 * period] : to === samples.length ? [-period, -2 * period] : [-period, period];
  const isLit = (n: number): boolean => n >= 0 && n < samples.length && Math.abs(samples[n]!) > level;
  let count = 0;
  for (let n = from; n < to; n++) if (isLit(n + one) && isLit(n + other)) count++;
  return count;
}

function isPresent(samples: Float64Array, from: number, to: number): boolean {
  return !samples.subarray(from, to).some(Number.isNaN);
}
