import type { Inrush } from '../breaks/supplyEvent.ts';
import { budgeted } from '../doubt/budget.ts';
import { alikeWithin, scaleComponents, scatter, within } from '../doubt/component.ts';
import type { HalfCycleRms, MeasuringChain } from '../envelope.ts';

interface InrushRecord {
  /** Current; shape N, NaN where missing. */
  readonly amperes: Float64Array;
  readonly intervalS: number;
  readonly startS: number;
  /** Of the voltage: its zeros part the half cycles. */
  readonly envelope: HalfCycleRms;
  readonly periodSamples: number;
  /** Standard deviation of the current's noise and rounding, A. */
  readonly noise: number;
  /** Smallest step of the current, A; null: not known. */
  readonly step: number | null;
  readonly chain: MeasuringChain;
}

/** Of the settled current's peak: a peak over it is an inrush. */
const OVER_SETTLED = 1.4;
/** So many times the noise it stands above that at least. */
const OVER_NOISE = 6;
/** Cycles within which the peak of an inrush comes. */
const PEAK_CYCLES = 5;
/** Cycles after the load comes on that the settled current is not told from. */
const UNSETTLED_CYCLES = 2;
/** Half cycles of the course that are given. */
const MOST_HALF_CYCLES = 20;

/**
 * The inrush of a load that comes on, or null where its current has no peak to speak of.
 *
 * @param around - sample near which the load comes on, within a cycle.
 * @param until - sample of the next change of the load or the voltage, or the record's end.
 */
export function inrushAt(record: InrushRecord, around: number, until: number): Inrush | null {
  const { amperes, intervalS, startS, periodSamples, noise, chain } = record;
  const onset = onsetNear(record, around, until);
  const settledFrom = Math.max(onset + UNSETTLED_CYCLES * periodSamples, (onset + until) / 2);
  if (until - settledFrom < periodSamples) return null;
  const settled = largest(amperes, settledFrom, until);
  const peak = largest(amperes, onset, Math.min(settledFrom, onset + PEAK_CYCLES * periodSamples));
  if (peak.size < Math.max(OVER_SETTLED * settled.size, settled.size + OVER_NOISE * noise)) return null;
  const clipped = isClipped(record, peak.at);
  return {
    kind: 'inrush',
    atS: budgeted(startS + peak.at * intervalS, [
      within('time of a sample', intervalS / 2, 's', 1),
      alikeWithin('time base', chain.instrument.timeBasePpm, 'ppm', (peak.at * intervalS) / 1e6),
    ]),
    peakA: budgeted(peak.size, [
      ...scaleComponents(peak.size, chain.instrument, 'scope and probe'),
      scatter('noise', noise, 'A', 1),
    ]),
    clipped,
    halfCycleA: halfCycleCourse(record, onset, until),
  };
}

function largest(
  amperes: Float64Array,
  from: number,
  to: number,
): { readonly at: number; readonly size: number } {
  let [at, size] = [Math.ceil(from), 0];
  for (let n = Math.max(0, Math.ceil(from)); n < to && n < amperes.length; n++) {
    if (Math.abs(amperes[n]!) > size) [at, size] = [n, Math.abs(amperes[n]!)];
  }
  return { at, size };
}

/** The first sample over what the current was before, within a cycle and some of where its RMS changes. */
function onsetNear({ amperes, periodSamples, noise }: InrushRecord, around: number, until: number): number {
  const before = largest(amperes, around - 3 * periodSamples, around - 1.2 * periodSamples).size;
  const over = 1.2 * before + OVER_NOISE * noise;
  const last = Math.min(until, around + 1.2 * periodSamples);
  for (let n = Math.max(0, Math.ceil(around - 1.2 * periodSamples)); n < last; n++) {
    if (Math.abs(amperes[n]!) > over) return n;
  }
  return Math.max(0, Math.ceil(around));
}

/** Samples at the rail: more than a rounded crest leaves there, as in `clippedEnds`. */
const PILE = 3;
const PILE_RATIO = 5;

/** Samples pile up at the peak, as a converter's rail leaves them. */
function isClipped({ amperes, periodSamples, step }: InrushRecord, at: number): boolean {
  const peak = amperes[at]!;
  const width = step ?? 1e-3 * Math.abs(peak);
  let [top, next] = [0, 0];
  const from = Math.max(0, Math.ceil(at - periodSamples / 2));
  for (let n = from; n < Math.min(amperes.length, at + periodSamples / 2); n++) {
    const below = (peak - amperes[n]!) * Math.sign(peak);
    if (below < 0.5 * width) top++;
    else if (below < 1.5 * width) next++;
  }
  return top >= PILE && top > PILE_RATIO * next;
}

/** RMS of each half cycle, between the voltage's zeros, from the one that the load comes on in. */
function halfCycleCourse(
  { amperes, envelope, periodSamples }: InrushRecord,
  onset: number,
  until: number,
): readonly number[] {
  const zero = envelope.from.find((from) => from > onset - periodSamples / 2) ?? onset;
  const course: number[] = [];
  for (let from = zero; course.length < MOST_HALF_CYCLES; from += periodSamples / 2) {
    const to = from + periodSamples / 2;
    if (to > until) break;
    let [sum, count] = [0, 0];
    for (let n = Math.max(0, Math.round(from)); n < Math.round(to); n++) {
      if (Number.isNaN(amperes[n]!)) continue;
      sum += amperes[n]! ** 2;
      count++;
    }
    if (count === 0) break;
    course.push(Number(Math.sqrt(sum / count).toPrecision(5)));
  }
  return course;
}
