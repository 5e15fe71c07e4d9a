import type { MeasureError } from '../base/measureError.ts';
import type { SampleRange } from '../read/capture.ts';
import { findFundamental, type NoFundamental } from '../signal/findFundamental.ts';
import { squaredDifference } from '../signal/firstPeriod.ts';
import { firstMissing, LONG_RECORD } from '../signal/recordParts.ts';
import { roughFundamental } from '../signal/roughFundamental.ts';
import { moments } from '../signal/statistics.ts';
import { briefVoltage } from './breaks/briefVoltage.ts';
import { mainsFragmentCycles } from './mainsFragment.ts';
import type { WaveInput } from './measuredWave.ts';
import { measureError } from './measureErrors.ts';
import { isDirect } from './waveEstimate.ts';

/** The stretch of a record that is measured, and what repeats in it. */
export interface LocatedWave {
  readonly samples: Float64Array;
  readonly startS: number;
  /** Radians a sample; null for DC and noise. */
  readonly omega: number | null;
  /**
   * `direct`: on a direct voltage something moves that doesn't repeat; `brief`: an outlet's voltage that is there for
   * under 1.3 cycles. Null where it repeats.
   */
  readonly aperiodic: 'constant' | 'direct' | 'noise' | 'brief' | null;
  /** True where a gap of over half a cycle split the record. */
  readonly split: boolean;
}

/**
 * Find the wave in a record: its fundamental, and the longest stretch that no gap of over half a cycle breaks.
 *
 * @param roughOmega - radians a sample, where to look first in a long record; absent: not known.
 * @throws MeasureError `wave.noPeriod` where nothing repeats and it is neither DC nor noise, `wave.tooShort`
 * under MINIMUM_CYCLES periods, `wave.tooCoarse` under eight samples a period.
 */
export function locateWave(input: WaveInput, roughOmega?: number): LocatedWave {
  const whole = fundamentalOf(input.samples, roughOmega);
  if ('none' in whole) return besideLongestGap(input) ?? aperiodicOrRefused(input, whole.none, whole.cycles);
  const halfCycle = Math.PI / whole.omega;
  const { from, to } = longestStretch(input.samples, halfCycle);
  const samples = input.samples.subarray(from, to);
  const startS = input.startS + from * input.intervalS;
  // A few blank cells at the ends change nothing worth a word.
  const split = samples.length < input.samples.length - halfCycle;
  if (!split) return { samples, startS, omega: whole.omega, aperiodic: null, split };
  const longest = findFundamental(samples);
  if ('none' in longest) throw refusal(longest.none, longest.cycles, input, true);
  return { samples, startS, omega: longest.omega, aperiodic: null, split };
}

/** A record of thousands of cycles is too long for a first look at all of it: parts of it tell where to start. */
function fundamentalOf(
  samples: Float64Array,
  roughOmega: number | undefined,
): ReturnType<typeof findFundamental> {
  if (roughOmega !== undefined && samples.length >= LONG_RECORD) {
    const told = findFundamental(samples, roughOmega);
    if (!('none' in told)) return told;
  }
  const seen = findFundamental(samples);
  if (!('none' in seen) || seen.none === 'constant' || samples.length < AVERAGED_RECORD) return seen;
  const rough = roughFundamental(samples);
  return rough === null ? seen : findFundamental(samples, rough);
}

/** Samples over which the first look averages several into one. */
const AVERAGED_RECORD = 20_000;

/** Of the record: a gap longer than this may hide what repeats on either side of it. */
const LONG_GAP = 0.02;

/** The wave in the longest part between the longest gaps, where those keep it from being seen as a whole. */
function besideLongestGap(input: WaveInput): LocatedWave | null {
  const { samples, startS, intervalS } = input;
  const longestGap = gapLength(samples);
  if (longestGap <= LONG_GAP * samples.length) return null;
  const { from, to } = longestStretch(samples, longestGap - 1);
  const part = { ...input, samples: samples.subarray(from, to), startS: startS + from * intervalS };
  const found = findFundamental(part.samples);
  if ('none' in found) return besideLongestGap(part);
  // A gap inside half a cycle is none that splits.
  if (longestGap <= Math.PI / found.omega) return null;
  return { ...locateWave(part), split: true };
}

/** The longest run of missing samples. */
function gapLength(samples: Float64Array): number {
  let longest = 0;
  let run = 0;
  for (const sample of samples) {
    run = Number.isNaN(sample) ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}

function aperiodicOrRefused(input: WaveInput, none: NoFundamental, cycles: number | null): LocatedWave {
  const { samples, startS } = input;
  const present = samples.filter((x) => !Number.isNaN(x));
  if (none === 'constant') return { samples, startS, omega: null, aperiodic: 'constant', split: false };
  // Neighbours as unlike as strangers: noise, alone or on a direct voltage, though some swing of about the record's
  // length always shows in it. A slow or single event is neither.
  const { mean, standardDeviation } = moments(present);
  const isRail = isDirect(mean, standardDeviation);
  if (none !== 'too coarse' && squaredDifference(present)[1]! > 0.5) {
    const aperiodic = isRail ? 'constant' : 'noise';
    return { samples, startS, omega: null, aperiodic, split: false };
  }
  if (isRail) {
    // The top of a sine has more mean than swing too.
    const piece = mainsFragmentCycles(samples, input.intervalS);
    if (piece !== null) throw refusal('too short', piece, input, false);
    return { samples, startS, omega: null, aperiodic: 'direct', split: false };
  }
  if (input.isSupply === true && briefVoltage(input) !== null)
    return { samples, startS, omega: null, aperiodic: 'brief', split: false };
  throw refusal(none, cycles, input, false);
}

function refusal(
  none: NoFundamental,
  cycles: number | null,
  { samples, intervalS }: WaveInput,
  isBetweenGaps: boolean,
): MeasureError {
  const stretch = { isBetweenGaps, lengthS: samples.length * intervalS };
  if (none === 'too coarse') return measureError('wave.tooCoarse', { ...stretch, intervalS });
  if (none === 'too short') return measureError('wave.tooShort', { ...stretch, cycles });
  const { min, max } = moments(samples);
  return measureError('wave.noPeriod', { ...stretch, min, max, cycles });
}

/**
 * The longest run of samples without a gap longer than allowed.
 *
 * @param samples - shape N; NaN marks a missing sample.
 * @param longestGap - samples, ≥ 0.
 * @returns the run, its ends present; empty (from = to) where nothing is present.
 */
export function longestStretch(samples: Float64Array, longestGap: number): SampleRange {
  let best: SampleRange = { from: 0, to: 0 };
  let from = presentFrom(samples, 0);
  for (let to = firstMissing(samples, from); from < samples.length; ) {
    const next = presentFrom(samples, to);
    // A short gap belongs to the run, but not at its end.
    if (next < samples.length && next - to <= longestGap) {
      to = firstMissing(samples, next);
      continue;
    }
    if (to - from > best.to - best.from) best = { from, to };
    from = next;
    to = firstMissing(samples, from);
  }
  return best;
}

/** The first present sample at or behind a place; the record's end where there is none. */
function presentFrom(samples: Float64Array, from: number): number {
  let n = from;
  while (n < samples.length && Number.isNaN(samples[n]!)) n++;
  return n;
}
