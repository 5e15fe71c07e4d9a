import type { ZeroTrack } from '../signal/phaseTrack.ts';
import { squareIntegrals } from '../signal/squareIntegrals.ts';
import type { ScaleSource } from './doubt/component.ts';
import type { Instrument } from './doubt/instrument.ts';

/** One channel on an even time base, for what changes along it. */
export interface ChannelRecord {
  /** Shape N, in U; NaN marks a missing sample. Not changed. */
  readonly samples: Float64Array;
  /** > 0. */
  readonly intervalS: number;
  /** Time of sample 0 on the file's own axis. */
  readonly startS: number;
}

/** RMS and length of every cycle, a new one each half cycle. All arrays are of one shape. */
export interface HalfCycleRms {
  /** Of the cycle's centre, on the file's own axis, ascending; uneven where cycles are left out. */
  readonly timeS: Float64Array;
  /** In U, DC included. */
  readonly rms: Float64Array;
  /** Of the fundamental over the cycle; carried on from beside it where `seen` is 0. */
  readonly frequencyHz: Float64Array;
  /** 1 where the samples show both zeros that bound the cycle, 0 near ends, breaks and gaps. */
  readonly seen: Uint8Array;
  /** Where the cycle starts and ends, in samples, not rounded. */
  readonly from: Float64Array;
  readonly to: Float64Array;
}

/** Of a cycle: with more of it missing it has no RMS. */
const MISSING_RATIO = 0.02;

/**
 * Urms(1/2): the RMS of one cycle of the fundamental from zero to zero, refreshed every half cycle.
 *
 * @param zeros - of the fundamental in this record; for a current, those of the voltage.
 * @returns null where no cycle is whole.
 * @remarks A cycle with over a fiftieth of its samples missing is left out. The phase follows the fundamental
 * as it wanders or jumps; where it can't be seen (no voltage) the cycles are as long as those beside it.
 * @see IEC 61000-4-30, definition of Urms(1/2), class A (from memory). Its time stamp there is the cycle's
 * end; here it is the centre.
 */
export function halfCycleRms(record: ChannelRecord, zeros: ZeroTrack): HalfCycleRms | null {
  const { samples, intervalS, startS } = record;
  const { crossings } = zeros;
  const { integrals, missing } = squareIntegrals(samples, crossings);
  const cycles: { from: number; to: number; rms: number; seen: number }[] = [];
  for (let m = 0; m + 2 < crossings.length; m++) {
    const [from, to] = [crossings[m]!, crossings[m + 2]!];
    if (from < 0 || to > samples.length - 1) continue;
    if (missing[m]! + missing[m + 1]! > MISSING_RATIO * (to - from)) continue;
    const rms = Math.sqrt((integrals[m]! + integrals[m + 1]!) / (to - from));
    cycles.push({ from, to, rms, seen: zeros.seen[m]! & zeros.seen[m + 2]! });
  }
  if (cycles.length === 0) return null;
  return {
    timeS: Float64Array.from(cycles, ({ from, to }) => startS + ((from + to) / 2) * intervalS),
    rms: Float64Array.from(cycles, ({ rms }) => rms),
    frequencyHz: Float64Array.from(cycles, ({ from, to }) => 1 / ((to - from) * intervalS)),
    seen: Uint8Array.from(cycles, ({ seen }) => seen),
    from: Float64Array.from(cycles, ({ from }) => from),
    to: Float64Array.from(cycles, ({ to }) => to),
  };
}

/** Of the largest square: a change between two samples that noise and the flank of a sine don't reach. */
const JUMP = 0.15;
/** Jumps a cycle under which they are events, and none of the wave's own. */
const LEAST_JUMPS = 0.5;

/**
 * How far the RMS of two cycles of one wave may differ because it jumps between two samples: each jump of a cycle is
 * known to a sample, and moves the mean square by its own step of v² times what a sample is of the cycle. Where half a
 * cycle is nearly a whole number of samples all jumps of one slip together, and stay so for cycles: they add up.
 *
 * @returns in the unit of the samples, ≥ 0; 0 for a wave that doesn't jump, or only now and then.
 */
export function rmsBetweenSamples(samples: Float64Array, periodSamples: number): number {
  let [most, sum, present] = [0, 0, 0];
  for (const x of samples) {
    if (Number.isNaN(x)) continue;
    most = Math.max(most, x * x);
    sum += x * x;
    present++;
  }
  // v² of a sine goes by 2π/P of its largest from sample to sample at most.
  const least = Math.max(JUMP, (6 * Math.PI) / periodSamples) * most;
  const step = (n: number): number => Math.abs(samples[n]! ** 2 - samples[n - 1]! ** 2);
  let [jumps, squares] = [0, 0];
  for (let n = 2; n + 1 < samples.length; n++) {
    // What the samples beside it show of the same edge is not between samples.
    const [jump, beside] = [step(n), step(n - 1) + step(n + 1)];
    if (!(jump > least && jump > beside)) continue;
    jumps++;
    squares += jump - beside;
  }
  if (jumps < (LEAST_JUMPS * present) / periodSamples) return 0;
  const ofOne = squares / jumps / (2 * periodSamples * Math.sqrt(sum / present));
  return (ofOne * jumps * periodSamples) / present;
}

type ExcursionKind = 'dip' | 'swell' | 'interruption';

/** A time for which Urms(1/2) was past a threshold. */
export interface Excursion {
  readonly kind: ExcursionKind;
  /** Time stamps of the first value past the threshold and of the first back within it and the hysteresis. */
  readonly startS: number;
  /** The record's last value where it doesn't come back. */
  readonly endS: number;
  /** False where the record starts inside it. */
  readonly startSeen: boolean;
  readonly endSeen: boolean;
  /** endS − startS; certain to a half cycle at each end, a lower bound where an end isn't seen. */
  readonly durationS: number;
  /** The lowest value of a dip or interruption (residual voltage), the highest of a swell, in U. */
  readonly extreme: number;
}

interface ExcursionThresholds {
  readonly dipRatio: number;
  readonly swellRatio: number;
  readonly interruptionRatio: number;
  readonly hysteresisRatio: number;
}

/** The usual settings, all of the declared voltage (IEC 61000-4-30 and EN 50160, from memory). */
const USUAL_THRESHOLDS: ExcursionThresholds = {
  dipRatio: 0.9,
  swellRatio: 1.1,
  interruptionRatio: 0.1,
  hysteresisRatio: 0.02,
};

/** Ratios are compared to this: 0.1 + 0.02 is not quite 0.12. */
const ROUNDING = 1e-9;

/**
 * Dips, swells and interruptions, in order of their start; an interruption is also part of a dip.
 *
 * @param nominal - declared voltage, in U, > 0.
 * @see IEC 61000-4-30, voltage dip, swell and interruption on Urms(1/2) (from memory). There the stamp is that
 * of the value itself; here values are stamped at their cycle's centre.
 */
export function excursions(
  { timeS, rms }: HalfCycleRms,
  nominal: number,
  thresholds: ExcursionThresholds = USUAL_THRESHOLDS,
): readonly Excursion[] {
  const { dipRatio, swellRatio, interruptionRatio, hysteresisRatio } = thresholds;
  const spans = (kind: ExcursionKind, sign: 1 | -1, thresholdRatio: number): Excursion[] => {
    const found: Excursion[] = [];
    const back = thresholdRatio - sign * hysteresisRatio;
    for (let k = 0; k < rms.length; k++) {
      if (!(sign * (rms[k]! / nominal - thresholdRatio) > ROUNDING)) continue;
      const start = k;
      let extreme = rms[k]!;
      while (k < rms.length && sign * (rms[k]! / nominal - back) > ROUNDING) {
        if (sign * rms[k]! > sign * extreme) extreme = rms[k]!;
        k++;
      }
      const endSeen = k < rms.length;
      const [startS, endS] = [timeS[start]!, timeS[Math.min(k, rms.length - 1)]!];
      found.push({ kind, startS, endS, startSeen: start > 0, endSeen, durationS: endS - startS, extreme });
    }
    return found;
  };
  return [
    ...spans('dip', -1, dipRatio),
    ...spans('swell', 1, swellRatio),
    ...spans('interruption', -1, interruptionRatio),
  ].sort((a, b) => a.startS - b.startS);
}

/**
 * Excursions whose beginning or end the record shows: where the whole of it lies off, or hovers at the threshold, the
 * nominal voltage may be the wrong one.
 */
export function withEnds(
  found: readonly Excursion[],
  { timeS, rms }: HalfCycleRms,
  nominal: number,
  { hysteresisRatio }: ExcursionThresholds = USUAL_THRESHOLDS,
): readonly Excursion[] {
  return found.filter(({ kind, startS, startSeen, endSeen, extreme }) => {
    if (endSeen || !startSeen) return endSeen;
    const sign = kind === 'swell' ? 1 : -1;
    return rms.some((value, k) => timeS[k]! < startS && sign * (extreme - value) > hysteresisRatio * nominal);
  });
}

/** What the voltages and times of a record may be off by. */
export interface MeasuringChain {
  readonly instrument: Instrument;
  readonly scaleSource: ScaleSource;
}
