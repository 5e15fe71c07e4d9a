import { log } from '../../base/elementary.ts';
import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { SampleRange } from '../../read/capture.ts';
import { quantisationStep } from '../../signal/quantisation.ts';
import { differenceNoise, extremes, median } from '../../signal/statistics.ts';
import { budgeted } from '../doubt/budget.ts';
import { alikeWithin, scaleComponents, within } from '../doubt/component.ts';
import { type Instrument, OFFSET_PERCENT_OF_RANGE } from '../doubt/instrument.ts';
import type { ChannelRecord, MeasuringChain } from '../envelope.ts';
import { type Departure, departure, type Place, type SteadySide, steadySide } from './steadySide.ts';
import type { CutOff, FailedStart, StartUp, SupplyBreak } from './supplyEvent.ts';

/** Figures of an event in one record, and the events that are no more than a few of them. */
export interface EventFigures {
  /** Time of a position in samples, known to lie within ± halfWidth samples. */
  time(position: number, halfWidth: number): MeasuredFigure;
  /** A time between two positions. */
  duration(samples: number, halfWidths: readonly [number, number]): MeasuredFigure;
  /** Largest |v| over a run of samples. */
  largest(from: number, to: number): MeasuredFigure;
  supplyBreak(place: BreakTimes, away: SampleRange, phaseJumpDeg: Figure, periodSamples: number): SupplyBreak;
  startUp(at: Place, periodSamples: number): StartUp;
  cutOff(at: Place): CutOff;
  failedStart(from: Place, to: Place): FailedStart;
}

/** Longest break that is still called a transfer. */
const TRANSFER_S = 0.2;

/** Where the voltage leaves the wave before a break and joins the one after it. */
interface BreakTimes {
  readonly leaves: Place;
  readonly joins: Place;
}

/** Largest |v| over a run of samples. */
export function largestSize(samples: Float64Array, from: number, to: number): number {
  let most = 0;
  for (const v of samples.subarray(Math.max(0, from), to)) if (Math.abs(v) > most) most = Math.abs(v);
  return most;
}

export function eventFigures(record: ChannelRecord, chain: MeasuringChain): EventFigures {
  const { instrument, scaleSource } = chain;
  const { samples, intervalS, startS } = record;
  const timeBase = (seconds: number) =>
    alikeWithin('time base', instrument.timeBasePpm, 'ppm', seconds / 1e6);
  const place = (halfWidth: number, source = 'where the voltage leaves or joins') =>
    within(source, halfWidth * intervalS, 's', 1);
  const time = (position: number, halfWidth: number): MeasuredFigure => {
    const offset = position * intervalS;
    return budgeted(startS + offset, [place(halfWidth), timeBase(offset)]);
  };
  // Asked of a record that something happens in only: it takes a look at all samples.
  const own = once(() => sampleDoubt(samples, instrument));
  const largest = (from: number, to: number): MeasuredFigure => {
    const most = largestSize(samples, from, to);
    const { offset, rounding, noise } = own();
    const count = Math.max(2, Math.min(to, samples.length) - Math.max(0, from));
    return budgeted(most, [
      ...scaleComponents(most, instrument, scaleSource),
      alikeWithin('vertical offset', offset, 'U', 1),
      within('rounding to codes', rounding, 'U', 1),
      // The largest of so many samples has the largest of their noise on it.
      within('noise', noise * Math.sqrt(2 * log(count)), 'U', 1),
    ]);
  };
  const duration = (length: number, [start, end]: readonly [number, number]): MeasuredFigure =>
    budgeted(length * intervalS, [
      place(start, 'where it starts'),
      place(end, 'where it ends'),
      timeBase(length * intervalS),
    ]);
  return {
    ...{ time, duration, largest },
    supplyBreak: ({ leaves, joins }, away, phaseJumpDeg, periodSamples) => {
      const halfWidths = [leaves.halfWidth, joins.halfWidth] as const;
      const durationS = duration(joins.position - leaves.position, halfWidths);
      return {
        kind: durationS.value <= TRANSFER_S ? 'transfer' : 'outage',
        startS: time(leaves.position, leaves.halfWidth),
        endS: time(joins.position, joins.halfWidth),
        durationS,
        phaseJumpDeg,
        residual: largest(away.from, away.to),
        returnPeak: largest(away.to, away.to + Math.ceil(periodSamples)),
      };
    },
    startUp: ({ position, halfWidth }, periodSamples) => ({
      kind: 'start-up',
      startS: time(position, halfWidth),
      returnPeak: largest(Math.floor(position), Math.ceil(position + halfWidth + periodSamples)),
    }),
    cutOff: ({ position, halfWidth }) => ({ kind: 'cut-off', startS: time(position, halfWidth) }),
    failedStart: (from, to) => ({
      kind: 'failed start',
      startS: time(from.position, from.halfWidth),
      endS: time(to.position, to.halfWidth),
      returnPeak: largest(Math.floor(from.position), Math.ceil(to.position)),
    }),
  };
}

/** What one sample may be off by beside its scale, in the unit of the samples: half-widths, and a standard deviation of noise. */
function sampleDoubt(
  samples: Float64Array,
  { offsetV }: Instrument,
): { readonly offset: number; readonly rounding: number; readonly noise: number } {
  const { min, max } = extremes(samples);
  return {
    offset: offsetV ?? (OFFSET_PERCENT_OF_RANGE / 100) * (max - min),
    rounding: (quantisationStep(samples) ?? 0) / 2,
    noise: differenceNoise(samples),
  };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** A run without voltage and the voltage on both sides, in samples; a side may be empty. */
export interface BreakPlace {
  readonly before: SampleRange;
  readonly run: SampleRange;
  readonly after: SampleRange;
}

/** A stretch of the record that is proven to be without voltage. */
export interface DarkSpell {
  /** All that may belong to it, in samples. */
  readonly range: SampleRange;
  /** Where the voltage leaves; null where the record starts without it. */
  readonly leaves: Place | null;
  /** Where it joins again; null where the record ends without it. */
  readonly joins: Place | null;
  /** What is surely without voltage, and how the waves beside it stand to each other; null at the record's ends. */
  readonly between: { readonly away: SampleRange; readonly phaseJumpDeg: Figure } | null;
}

/** Where the voltage leaves and joins around a dark run, as far as the waves beside it tell. */
interface VoltageEdges {
  readonly left: SteadySide | null;
  readonly right: SteadySide | null;
  /** Null where there is too little wave on that side to be carried on. */
  readonly leaves: Departure | null;
  readonly joins: Departure | null;
}

/** Of a period: how far outside the dark run its true ends are looked for. */
const MARGIN_CYCLES = 0.2;
/** The same where a residual voltage may die out before it, and the cycles of wave that it takes to tell. */
const RESIDUAL_CYCLES = 0.7;
const LONG_SIDE_CYCLES = 3;
/** Of the peak: what is farther from the wave, and from rest, is neither. A load step of some per cent is no end. */
const RESIDUAL = 0.08;
/** Of a period: how far into the dark run they are. No wave rests at zero for so long. */
const REACH_CYCLES = 1.2;

/**
 * Where the voltage leaves and joins, told from how the wave beside the dark run would have gone on.
 *
 * @param omega - the fundamental, rough, radians a sample.
 * @param peak - largest size of the voltage, in the unit of the samples.
 */
export function voltageEdges(
  samples: Float64Array,
  { before, run, after }: BreakPlace,
  omega: number,
  peak: number,
): VoltageEdges {
  const periodSamples = (2 * Math.PI) / omega;
  const margin = Math.floor(MARGIN_CYCLES * periodSamples);
  // A residual voltage dies out before the run: where there is enough of the wave, it is followed from farther away.
  const isLong = run.from - before.from > LONG_SIDE_CYCLES * periodSamples;
  const lead = isLong ? Math.floor(RESIDUAL_CYCLES * periodSamples) : margin;
  const reach = Math.ceil(REACH_CYCLES * periodSamples);
  const early = { from: before.from, to: Math.max(before.from, run.from - lead) };
  const late = { from: Math.min(after.to, run.to + margin), to: after.to };
  const [left, right] = [steadySide(samples, early, true, omega), steadySide(samples, late, false, omega)];
  const rest = median(samples.slice(run.from, run.to));
  const voltage = samples.subarray(early.from, late.to);
  const noise = Math.max(
    differenceNoise(voltage),
    // A record that rests on single codes hides noise of up to half a step.
    (quantisationStep(voltage) ?? 0) / 2,
    1e-3 * peak,
  );
  const leaving = { from: early.to, to: Math.min(run.to, run.from + reach) };
  const joining = { from: Math.max(run.from, run.to - reach), to: late.from };
  return {
    left,
    right,
    leaves:
      left && departure(samples, left, leaving, rest, noise, Math.max(4 * noise, RESIDUAL * peak), false),
    joins: right && departure(samples, right, joining, rest, noise, Number.POSITIVE_INFINITY, true),
  };
}
