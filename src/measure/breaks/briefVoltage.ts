import type { SampleRange } from '../../read/capture.ts';
import type { ChannelRecord, MeasuringChain } from '../envelope.ts';
import { eventFigures } from './eventFigures.ts';
import type { Place } from './steadySide.ts';
import type { CutOff, FailedStart, StartUp } from './supplyEvent.ts';

/** Voltage of an outlet that is there for too short to repeat, in a record that is without it otherwise. */
interface BriefVoltage {
  /** All that reaches 15 % of the peak, in samples. */
  readonly lit: SampleRange;
  /** Where it comes, and where it goes; null where the record starts, or ends, with it. */
  readonly joins: Place | null;
  readonly leaves: Place | null;
}

/** Of the peak: what is smaller is no voltage, or on its way through zero. */
const LIT_RATIO = 0.15;
/** Of the peak: what a record without voltage stays under, and where a rest begins to be one. */
const QUIET_RATIO = 0.05;
/** What is shorter is a pulse; what is longer holds 1.3 cycles of the slowest mains, 42.5 Hz, and then some. */
const LENGTH_S = [0.004, 0.034] as const;
/** Half cycles of mains, and what load and start make of them, s. */
const HALF_CYCLE_S = [0.006, 0.013] as const;
/** A wave may rest at zero by itself for shorter: half a cycle of 50 Hz. */
const REST_S = 0.01;
/** Of the voltage's own length: shorter rests beside it are those of pulses that would come again. */
const REST_SHARE = 0.75;
/** Of the lit samples, on the rarer side of zero: less is a pulse to one side, which no outlet gives. */
const LEAST_SIDE = 0.1;
/** Changes of sign in 1.3 cycles, at most. */
const MOST_CROSSINGS = 3;

/**
 * Up to 1.3 cycles of mains to both sides of zero, beside rests that are no wave's own: an output that started and was
 * gone again, or that the record shows the first or last cycle of.
 *
 * @returns null for everything else, as pulses to one side and bursts faster than any mains.
 */
export function briefVoltage({
  samples,
  intervalS,
}: Pick<ChannelRecord, 'samples' | 'intervalS'>): BriefVoltage | null {
  const peak = largestButFive(samples);
  const level = LIT_RATIO * peak;
  const isLit = (n: number): boolean => Math.abs(samples[n]!) >= level;
  const from = samples.findIndex((_, n) => isLit(n));
  const to = samples.findLastIndex((_, n) => isLit(n)) + 1;
  const lengthS = (to - from) * intervalS;
  if (from < 0 || lengthS < LENGTH_S[0] || lengthS > LENGTH_S[1]) return null;
  if (!isOfMains(samples.subarray(from, to), level, intervalS)) return null;
  const restS = Math.max(REST_S, REST_SHARE * lengthS);
  const isRest = (range: SampleRange): boolean =>
    (range.to - range.from) * intervalS >= restS && isQuiet(samples, range, QUIET_RATIO * peak);
  // What rests at one end only must do so for longer: a wave that is cut off by the record's end rests too.
  const [rests, goes] = [isRest({ from: 0, to: from }), isRest({ from: to, to: samples.length })];
  if (!rests && !(from === 0 && goes && (samples.length - to) * intervalS >= 2 * restS)) return null;
  if (!goes && !(to === samples.length && rests && from * intervalS >= 2 * restS)) return null;
  return {
    lit: { from, to },
    joins: rests ? edge(samples, from, -1, QUIET_RATIO * peak) : null,
    leaves: goes ? edge(samples, to - 1, 1, QUIET_RATIO * peak) : null,
  };
}

/** What the record shows of such a voltage: a failed start, a start or a loss. */
export function briefEvent(
  record: ChannelRecord,
  { lit, joins, leaves }: BriefVoltage,
  chain: MeasuringChain,
): FailedStart | StartUp | CutOff {
  const figures = eventFigures(record, chain);
  if (joins === null) return figures.cutOff(leaves!);
  return leaves === null ? figures.startUp(joins, lit.to - lit.from) : figures.failedStart(joins, leaves);
}

/** The size that all but five samples stay under: a hundredth of the record may be all that has voltage. */
function largestButFive(samples: Float64Array): number {
  const sizes = samples
    .filter((v) => !Number.isNaN(v))
    .map(Math.abs)
    .sort();
  return sizes.at(-6) ?? 0;
}

/** Swings to both sides of zero, and through it no faster and no slower than mains do. */
function isOfMains(lit: Float64Array, level: number, intervalS: number): boolean {
  const crossings: number[] = [];
  let [above, below, last] = [0, 0, 0];
  lit.forEach((v, n) => {
    const sign = v >= level ? 1 : v <= -level ? -1 : 0;
    if (sign === 0) return;
    if (sign > 0) above++;
    else below++;
    if (last !== 0 && sign !== last) crossings.push(n);
    last = sign;
  });
  if (Math.min(above, below) < LEAST_SIDE * (above + below)) return false;
  const halves = crossings.slice(1).map((n, i) => (n - crossings[i]!) * intervalS);
  return (
    crossings.length <= MOST_CROSSINGS && halves.every((s) => s >= HALF_CYCLE_S[0] && s <= HALF_CYCLE_S[1])
  );
}

/** RMS of a stretch, but for what beside the voltage is still on its way. */
function isQuiet(samples: Float64Array, { from, to }: SampleRange, most: number): boolean {
  const margin = (to - from) >> 2;
  let [sum, count] = [0, 0];
  for (let n = from + margin; n < to - margin; n++) {
    if (Number.isNaN(samples[n]!)) continue;
    sum += samples[n]! ** 2;
    count++;
  }
  return count > 0 && Math.sqrt(sum / count) < most;
}

/**
 * Where the voltage comes or goes: between the last sample that is surely there and the first that surely rests. What
 * is left decays over a while that is taken for a part of it as likely as not.
 */
function edge(samples: Float64Array, lit: number, way: -1 | 1, quiet: number): Place {
  let n = lit;
  while (n + way >= 0 && n + way < samples.length && Math.abs(samples[n + way]!) > quiet) n += way;
  const tail = Math.abs(n - lit);
  // From all of it to 15 % a decay takes 1.7 times as long as from there to 5 %.
  const early = way > 0 ? DECAY_RATIO * tail : 0;
  const [first, last] = [lit - way * early, n + way];
  return { position: (first + last) / 2, halfWidth: Math.abs(last - first) / 2 };
}

/** ln(1 / 0.15) / ln(0.15 / 0.05). */
const DECAY_RATIO = 1.73;
