import { exp } from '../base/elementary.ts';
import { RUN_SAMPLES } from './recordParts.ts';
import { type Extremes, extremes, median } from './statistics.ts';

/** A value at which the wave rests. */
export interface AmplitudeLevel {
  /** In the unit of the samples. */
  readonly value: number;
  /** Of the samples, 0 to 1. */
  readonly share: number;
}

export interface LevelOptions {
  /** Standard deviation of the noise in the unit of the samples, ≥ 0. */
  readonly noise: number;
  /** Digitiser step in the unit of the samples; 0 where unknown. */
  readonly step: number;
  /** Of the samples, where they are known. */
  readonly extent?: Extremes;
}

/**
 * The levels at which a stepped wave rests, or none for a smooth wave, from the density of its values.
 *
 * A wave with plateaus leaves the values between them almost empty: it crosses them in edges. A sine never
 * does: its density is least in the middle and still 0.64 of even. A value range counts as empty below a
 * quarter of even density; the wave is stepped when at most a sixth of the time is spent in such ranges.
 *
 * @param samples - shape N, NaN marks a missing sample; at least one is present. Not changed.
 * @returns levels in ascending order, at least two; or an empty list for a smooth wave.
 * @remarks Independent of the period, so a bad frequency can't blur the steps. Tilted or ringing tops are one
 * level: ranges closer than 0.4 of the widest spacing are one. A value that single samples hit, cycle after
 * cycle, because the sample rate is a multiple of the frequency, is no level: nothing rests there.
 */
export function amplitudeLevels(samples: Float64Array, options: LevelOptions): readonly AmplitudeLevel[] {
  const { min: low, max, count } = options.extent ?? extremes(samples);
  const range = max - low;
  if (!(range > 0)) return [];
  // Wide enough that neither the digitiser's steps nor noise cut the density into pieces, narrow enough for
  // seventeen levels, whose spacing is 1/16 of the range; for more of them narrower still, where those allow it.
  const blurOf = (least: number): number =>
    Math.max(least * range, 0.7 * options.step, Math.min(options.noise, 0.015 * range));
  const widest = blurOf(0.008);
  const span = range + 8 * widest;
  const cells = cellsOf(samples, low - 4 * widest, span);
  const found = levelsAt(samples, cells, { range, count, span, blur: widest, leastShare: 0.015 });
  const finest = blurOf(0.004);
  if (finest === widest) return found;
  const many = levelsAt(samples, cells, { range, count, span, blur: finest, leastShare: 0.007 });
  return found.length === 0 || many.length >= MANY_LEVELS ? many : found;
}

/** From so many levels on the wider look takes the dense outer ones for one. */
const MANY_LEVELS = 24;

function levelsAt(
  samples: Float64Array,
  cells: Cells,
  {
    range,
    count,
    span,
    blur,
    leastShare,
  }: Record<'range' | 'count' | 'span' | 'blur' | 'leastShare', number>,
): readonly AmplitudeLevel[] {
  const density = smoothDensity(cells.counts, count, span, blur);
  const zones = occupiedZones(density, cells, count, span / CELLS / range);
  const levels = restedAt(samples, mergeClose(zones.filter((zone) => zone.share > leastShare)));
  const resting = levels.reduce((sum, level) => sum + level.share, 0);
  return levels.length >= 2 && resting >= 1 - 1 / 6 ? levels : [];
}

/** Cells that the range is cut into. */
const CELLS = 1024;

interface Cells {
  /** Samples in each cell, and their sum. Shapes CELLS. */
  readonly counts: Float64Array;
  readonly sums: Float64Array;
}

function cellsOf(samples: Float64Array, from: number, span: number): Cells {
  const cells = { counts: new Float64Array(CELLS), sums: new Float64Array(CELLS) };
  for (let n = 0; n < samples.length; n += RUN_SAMPLES) {
    addToCells(cells, samples.subarray(n, n + RUN_SAMPLES), from, CELLS / span);
  }
  return cells;
}

function addToCells({ counts, sums }: Cells, samples: Float64Array, from: number, perUnit: number): void {
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    const cell = Math.min(CELLS - 1, ((x - from) * perUnit) | 0);
    counts[cell]!++;
    sums[cell]! += x;
  }
}

/** Gaussian kernel density, as the share of samples a cell. */
function smoothDensity(counts: Float64Array, count: number, span: number, blur: number): Float64Array {
  const reach = Math.ceil((4 * blur * CELLS) / span);
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
    exp(-0.5 * (((i - reach) * span) / (CELLS * blur)) ** 2),
  );
  const whole = kernel.reduce((sum, k) => sum + k, 0);
  const density = new Float64Array(CELLS);
  for (let cell = 0; cell < CELLS; cell++) {
    if (counts[cell] === 0) continue;
    const share = counts[cell]! / count;
    for (let i = Math.max(0, cell - reach); i <= Math.min(CELLS - 1, cell + reach); i++) {
      density[i]! += (share * kernel[i - cell + reach]!) / whole;
    }
  }
  return density;
}

/**
 * Runs of cells at least a quarter as dense as an even spread over the range, each with its mean and share.
 *
 * @param evenShare - of the samples, in one cell were they spread evenly.
 */
function occupiedZones(
  density: Float64Array,
  { counts, sums }: Cells,
  count: number,
  evenShare: number,
): AmplitudeLevel[] {
  const threshold = 0.25 * evenShare;
  const zones: AmplitudeLevel[] = [];
  for (let cell = 0; cell < CELLS; cell++) {
    let [held, sum] = [0, 0];
    for (; cell < CELLS && density[cell]! >= threshold; cell++) {
      held += counts[cell]!;
      sum += sums[cell]!;
    }
    if (held > 0) zones.push({ value: sum / held, share: held / count });
  }
  return zones;
}

function mergeClose(zones: readonly AmplitudeLevel[]): AmplitudeLevel[] {
  const spacings = zones.slice(1).map((zone, i) => zone.value - zones[i]!.value);
  const widest = Math.max(0, ...spacings);
  const merged: AmplitudeLevel[] = [];
  zones.forEach((zone, i) => {
    const below = merged.at(-1);
    if (below === undefined || spacings[i - 1]! >= 0.4 * widest) merged.push(zone);
    else {
      const share = below.share + zone.share;
      merged[merged.length - 1] = {
        value: (below.value * below.share + zone.value * zone.share) / share,
        share,
      };
    }
  });
  return merged;
}

/** Samples that a wave stays at a level on the average, at least. */
const LEAST_RUN = 1.5;
/** Of the samples nearest to a level, the share within a quarter of the spacing of it: a ramp has a half there. */
const LEAST_CORE = 0.65;

/**
 * The levels at which the wave stays; the outermost ones are its extremes, and stand however short. Two levels
 * seen as one have few samples near their mean, so the middle one of all decides whether this is a ramp.
 */
function restedAt(samples: Float64Array, levels: readonly AmplitudeLevel[]): readonly AmplitudeLevel[] {
  if (levels.length < 3) return levels;
  const spacingAt = (i: number): number =>
    Math.min(
      levels[i]!.value - (levels[i - 1]?.value ?? Number.NEGATIVE_INFINITY),
      (levels[i + 1]?.value ?? Number.POSITIVE_INFINITY) - levels[i]!.value,
    );
  const cores = Float64Array.from(levels, (_, i) => spacingAt(i) / 4);
  const counts = new Uint32Array(levels.length);
  const runs = new Uint32Array(levels.length);
  const near = new Uint32Array(levels.length);
  let before = -1;
  for (const sample of samples) {
    const at = Number.isNaN(sample) ? -1 : nearestLevel(sample, levels, Math.max(0, before));
    if (at >= 0) {
      counts[at]!++;
      if (at !== before) runs[at]!++;
      if (Math.abs(sample - levels[at]!.value) <= cores[at]!) near[at]!++;
    }
    before = at;
  }
  const inner = levels.map((_, i) => i).slice(1, -1);
  const isRamp = median(inner.map((i) => near[i]! / Math.max(1, counts[i]!))) < LEAST_CORE;
  const isRested = (i: number): boolean => !isRamp && counts[i]! >= LEAST_RUN * runs[i]!;
  return levels.filter((_, i) => !inner.includes(i) || isRested(i));
}

/** Index of the level nearest to a value, looked for from one that is likely. */
function nearestLevel(value: number, levels: readonly AmplitudeLevel[], likely: number): number {
  let at = likely;
  const distance = (i: number): number => Math.abs(value - (levels[i]?.value ?? Number.POSITIVE_INFINITY));
  while (distance(at + 1) < distance(at)) at++;
  while (distance(at - 1) < distance(at)) at--;
  return at;
}
