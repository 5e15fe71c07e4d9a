import type { Channel, OverRange, Quantity } from '../capture.ts';
import type { ValueColumn } from '../columns/layColumns.ts';
import { nameSays } from '../head/nameSays.ts';
import type { Setting } from '../head/setting.ts';
import { type CountScale, countScale, impliedScale, isScaleStated } from './countScale.ts';
import { gapsOf } from './gapsOf.ts';
import { inputSettings } from './inputSettings.ts';
import { settleOverRange } from './overRange.ts';
import { wholeNumbers } from './wholeNumbers.ts';

/** A channel, and whether what it carries was told or assumed. */
export interface BuiltChannel {
  readonly channel: Channel;
  readonly isUnitAssumed: boolean;
  readonly isUnscaledCounts: boolean;
  /** What one count would be, where the numbers look like codes and the head hints at it. */
  readonly implied: ReturnType<typeof impliedScale>;
}

/** What the numbers of a column are, and how they become amounts: (number − reference) · factor + origin. */
interface Carried {
  readonly quantity: Quantity;
  readonly unit: string;
  readonly reference: number;
  readonly factor: number;
  readonly origin: number;
  readonly stepSize: number | null;
}

/**
 * A channel in volts or amperes from the numbers of its column: prefixes resolved, converter counts
 * scaled where the head says how.
 *
 * @param name - unique within the capture.
 * @param samples - evenly spaced, NaN in gaps, infinite beyond the range; scaled in place.
 */
export function buildChannel(
  column: ValueColumn,
  name: string,
  samples: Float64Array,
  settings: readonly Setting[],
): BuiltChannel {
  const gaps = gapsOf(samples);
  const overRange = gaps.length === 0 ? null : settleOverRange(samples, gaps);
  const { coupling, probeRatio, bits, stepSize } = inputSettings(settings, column.place);
  const isCounts = column.role === 'counts' || isBareCounts(column, samples, settings);
  const scale = isCounts ? countScale(settings, column.place) : null;
  const implied = scale === null ? impliedFor(isCounts, samples, settings, column) : null;
  const carried =
    scale !== null ? scaledCounts(scale) : isCounts ? BARE_COUNTS : carriedByUnit(column, stepSize);
  const { quantity, unit, reference, factor, origin } = carried;
  if (reference !== 0 || factor !== 1 || origin !== 0) {
    for (let i = 0; i < samples.length; i++) samples[i] = (samples[i]! - reference) * factor + origin;
  }
  return {
    channel: {
      name,
      quantity,
      unit,
      scale: 1,
      samples,
      // What was beyond the range is no gap any more.
      gaps: overRange === null ? gaps : gapsOf(samples),
      stepSize: carried.stepSize,
      coupling,
      probeRatio,
      bits,
      ...(overRange === null ? {} : { overRange: scaledRange(overRange, carried) }),
    },
    isUnitAssumed: !isCounts && column.isAssumed && quantity !== 'other',
    isUnscaledCounts: isCounts && scale === null,
    implied,
  };
}

/** Of numbers that were taken as they stand: bare counts, or whole numbers under a header that calls them volts. */
function impliedFor(
  isCounts: boolean,
  samples: Float64Array,
  settings: readonly Setting[],
  { place, role }: ValueColumn,
): ReturnType<typeof impliedScale> {
  if (isCounts) return impliedScale(settings, place);
  if (role === 'other' || countScale(settings, place) === null) return null;
  return wholeNumbers(samples).mayBeCounts ? impliedScale(settings, place) : null;
}

function scaledRange({ sampleCount, top, bottom }: OverRange, carried: Carried): OverRange {
  const { reference, factor, origin } = carried;
  const scaled = (value: number | null): number | null =>
    value === null ? null : (value - reference) * factor + origin;
  // A negative factor turns the wave over.
  const ends = factor < 0 ? [bottom, top] : [top, bottom];
  return { sampleCount, top: scaled(ends[0]!), bottom: scaled(ends[1]!) };
}

const BARE_COUNTS: Carried = {
  quantity: 'other',
  unit: 'counts',
  reference: 0,
  factor: 1,
  origin: 0,
  stepSize: null,
};

function scaledCounts({ perCount, reference, origin, unit }: CountScale): Carried {
  const quantity = unit === 'V' ? 'voltage' : 'current';
  return { quantity, unit, reference, factor: perCount, origin, stepSize: Math.abs(perCount) };
}

function carriedByUnit({ role, unit }: ValueColumn, stepSize: number | null): Carried {
  const factor = unit?.factor ?? 1;
  if (role !== 'voltage' && role !== 'current') {
    return { quantity: 'other', unit: unit?.symbol ?? '', reference: 0, factor, origin: 0, stepSize: null };
  }
  return { quantity: role, unit: role === 'voltage' ? 'V' : 'A', reference: 0, factor, origin: 0, stepSize };
}

/** Whether a column that no header calls a voltage holds a converter's codes. */
function isBareCounts(column: ValueColumn, samples: Float64Array, settings: readonly Setting[]): boolean {
  if (column.role !== 'voltage' || column.isUnitInHeader || !column.isPrintedWhole) return false;
  if (nameSays(column.name) !== 'silent') return false;
  const { mayBeCounts, areLikelyCounts } = wholeNumbers(samples);
  // A unit and a scale among the settings belong to the scaled value, not to whole numbers.
  if (isScaleStated(settings, column.place)) return mayBeCounts;
  return column.isAssumed && areLikelyCounts;
}
