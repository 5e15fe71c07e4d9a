import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { SampleRange } from '../../read/capture.ts';
import { quantisationStep } from '../../signal/quantisation.ts';
import { differenceNoise } from '../../signal/statistics.ts';
import { LEAST_BREAK_CYCLES, phaseJump } from './darkSpells.ts';
import type { EventFigures } from './eventFigures.ts';
import { type Place, type SteadySide, steadySide } from './steadySide.ts';
import type { SupplyBreak } from './supplyEvent.ts';

/** A wave that goes on at another phase, as when another source takes over at once. */
export interface PhaseJump {
  readonly atS: MeasuredFigure;
  /** How far the wave after is ahead of the one before, carried on; (−180, 180]. */
  readonly degrees: MeasuredFigure;
}

/** Where a wave doesn't go on, before it is timed. */
export interface SeamSeen extends SampleRange {
  /** True where it dies out and comes back; else it jumps in phase. */
  readonly isBreak: boolean;
  readonly phaseJumpDeg: Figure;
  readonly periodSamples: number;
}

interface SeamPlace {
  /** Sample near which something changes, within a cycle. */
  readonly around: number;
  /** The stretches on both sides, up to what else happens. */
  readonly before: SampleRange;
  readonly after: SampleRange;
  /** Largest size of the voltage, in the unit of the samples. */
  readonly peak: number;
  /** True where the voltage is the same before and after. */
  readonly isLevel: boolean;
}

/** Cycles around the place that the seam is looked for in, and beyond which the waves are steady. */
const SEARCH_CYCLES = 1.7;
/** Of a side: what a wave can be told from. */
const LEAST_SIDE_CYCLES = 1.4;
/** Of a period: what is nearer to the seam than this is not fitted. */
const MARGIN_CYCLES = 0.3;
/** Of the peak: a sample so far from both waves belongs to neither. */
const NEITHER = 0.08;
/** Of a period: so much must not be of either wave before it is said that some of it isn't. */
const LEAST_NEITHER_CYCLES = 0.01;
/**
 * Degrees that no load of the same voltage before and after makes, as its source does not slow down for it; and those
 * that none makes. Common practice, no source.
 */
const LEAST_DEGREES = { level: 6, any: 15 } as const;
/** Standard deviations of the phase. */
const SURE = 5;

/**
 * Tells what is no load step: a wave that goes on at another phase, or one that dies out and comes back though it never
 * rests at zero.
 *
 * cost(a, b) = Σ_{n<a} (v − wave before)² + (b − a)·neither² + Σ_{n≥b} (v − wave after)², least over a ≤ b
 *
 * @param omega - the fundamental, rough, radians a sample.
 * @returns null where the wave before goes on, or there is too little of one to tell.
 */
export function seamAt(samples: Float64Array, place: SeamPlace, omega: number): SeamSeen | null {
  const { around, before, after, peak, isLevel } = place;
  const period = (2 * Math.PI) / omega;
  // Beside a record's end nearer than a cycle, so that there is a wave to fit at all.
  const least = LEAST_SIDE_CYCLES * period;
  const rough = between(samples, place, omega, {
    from: Math.min(around, Math.max(around - period, before.from + least)),
    to: Math.max(around, Math.min(around + period, after.to - least)),
  });
  if (rough === null) return null;
  // Once more from where it is: a change is known to a cycle only, and waves fitted across it are none.
  const margin = MARGIN_CYCLES * period;
  const { left, right, from, to } =
    between(samples, place, omega, { from: rough.from - margin, to: rough.to + margin }) ?? rough;
  const gap = to - from;
  const jump = phaseJump(left, right, (from + to) / 2);
  const seam = { from, to, phaseJumpDeg: jump, periodSamples: period };
  if (gap >= LEAST_BREAK_CYCLES * period && diesOut(samples, { from, to }, peak))
    return { ...seam, isBreak: true };
  if (jump.value === null) return null;
  const leastDegrees = Math.max(
    isLevel ? LEAST_DEGREES.level : LEAST_DEGREES.any,
    (SURE * jump.uncertainty) / 2,
  );
  return Math.abs(jump.value) < leastDegrees ? null : { ...seam, isBreak: false };
}

/** Of a period: the nearest that a seam is known to, half a sample at the least. */
const PLACE_CYCLES = 0.01;

/** A seam with its times. */
export function seamFigures(
  { from, to, isBreak, phaseJumpDeg, periodSamples }: SeamSeen,
  figures: EventFigures,
): PhaseJump | SupplyBreak {
  if (isBreak || phaseJumpDeg.value === null) {
    const halfWidth = Math.max(0.5, PLACE_CYCLES * periodSamples);
    const [leaves, joins] = [from, to].map((n) => ({ position: n - 0.5, halfWidth })) as [Place, Place];
    // However long: a wave that dies out without a rest is followed for a few cycles only.
    const found = figures.supplyBreak({ leaves, joins }, { from, to }, phaseJumpDeg, periodSamples);
    return { ...found, kind: 'transfer' };
  }
  const within = Math.max((to - from) / 2, PLACE_CYCLES * periodSamples);
  return { atS: figures.time((from + to) / 2, within), degrees: phaseJumpDeg };
}

interface Seam extends SampleRange {
  readonly left: SteadySide;
  readonly right: SteadySide;
}

/** The seam between the wave up to one sample and that from another on; null where one of them is too short to tell. */
function between(
  samples: Float64Array,
  { around, before, after, peak }: SeamPlace,
  omega: number,
  apart: SampleRange,
): Seam | null {
  const period = (2 * Math.PI) / omega;
  const early = { from: before.from, to: Math.floor(apart.from) };
  const late = { from: Math.ceil(apart.to), to: after.to };
  const [left, right] = [steadySide(samples, early, true, omega), steadySide(samples, late, false, omega)];
  if (left === null || right === null) return null;
  const search = {
    from: Math.max(early.from, Math.floor(around - SEARCH_CYCLES * period)),
    to: Math.min(late.to, Math.ceil(around + SEARCH_CYCLES * period)),
  };
  const found = leastCost(samples, search, { left, right, period, peak });
  return found === null ? null : { ...found, left, right };
}

interface Sides {
  readonly left: SteadySide;
  readonly right: SteadySide;
  readonly period: number;
  readonly peak: number;
}

/** Where the wave before ends and the one after begins; null where one of them can't be carried so far. */
function leastCost(
  samples: Float64Array,
  { from, to }: SampleRange,
  { left, right, period, peak }: Sides,
): SampleRange | null {
  const stretch = samples.subarray(from, to);
  const noise = Math.max(differenceNoise(stretch), (quantisationStep(stretch) ?? 0) / 2, 1e-3 * peak);
  const neither = Math.max(4 * noise, NEITHER * peak) ** 2;
  const entry = LEAST_NEITHER_CYCLES * period * neither;
  const after = new Float64Array(to - from + 1);
  for (let i = to - from - 1; i >= 0; i--) {
    const range = right.rangeAt(from + i);
    if (range === null) return null;
    after[i] = after[i + 1]! + misfit(samples[from + i]!, range);
  }
  let [before, best, at, end] = [0, Number.POSITIVE_INFINITY, from, from];
  let [between, since] = [Number.POSITIVE_INFINITY, from];
  for (let i = 0; i <= to - from; i++) {
    if (before + entry < between) [between, since] = [before + entry, from + i];
    if (before + after[i]! < best) [best, at, end] = [before + after[i]!, from + i, from + i];
    if (between + after[i]! < best) [best, at, end] = [between + after[i]!, since, from + i];
    if (i === to - from) break;
    const range = left.rangeAt(from + i);
    if (range === null) return null;
    before += misfit(samples[from + i]!, range);
    between += neither;
  }
  return { from: at, to: end };
}

function misfit(v: number, [low, high]: readonly [number, number]): number {
  return Number.isNaN(v) ? 0 : Math.max(0, low - v, v - high) ** 2;
}

/** Of what it begins with: what is left at the end of a voltage that dies out. */
const LEFT_OVER = 0.5;
/** Of the peak: so much it may seem to rise, or stand on the other side of zero, as it dies out. */
const RISE = 0.06;

/** A voltage that falls towards zero and never rises, on one side of it. */
function diesOut(samples: Float64Array, { from, to }: SampleRange, peak: number): boolean {
  const margin = Math.floor((to - from) / 10);
  const [first, last] = [from + margin, to - 1 - margin];
  const sign = Math.sign(samples[first]!);
  let least = sign * samples[first]!;
  for (let n = first; n <= last; n++) {
    const size = sign * samples[n]!;
    if (size > least + RISE * peak || size < -RISE * peak) return false;
    least = Math.min(least, size);
  }
  return sign * samples[last]! <= Math.max(LEFT_OVER * Math.abs(samples[first]!), RISE * peak);
}
