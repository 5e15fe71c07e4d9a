import type { Channel, Quantity } from '../capture.ts';
import type { ValueColumn } from '../columns/layColumns.ts';
import { nameSays } from '../head/nameSays.ts';
import type { Setting } from '../head/setting.ts';
import { countScale } from './countScale.ts';
import { gapsOf } from './gapsOf.ts';
import { inputSettings } from './inputSettings.ts';
import { isConverterCounts } from './isConverterCounts.ts';

/** A channel, and whether what it carries was told or assumed. */
export interface BuiltChannel {
  readonly channel: Channel;
  readonly isUnitAssumed: boolean;
  readonly isUnscaledCounts: boolean;
}

/**
 * A channel in volts or amperes from the numbers of its column: prefixes resolved, converter counts
 * scaled where the head says how.
 *
 * @param name - unique within the capture.
 * @param samples - evenly spaced, NaN in gaps; scaled in place.
 */
export function buildChannel(
  column: ValueColumn,
  name: string,
  samples: Float64Array,
  settings: readonly Setting[],
): BuiltChannel {
  const input = inputSettings(settings, column.place);
  const gaps = gapsOf(samples);
  const stated = countScale(settings, column.place);
  const isCounts = column.role === 'counts' || isBareCounts(column, samples, stated !== null);
  const scale = isCounts ? stated : null;
  const built = (quantity: Quantity, unit: string, stepSize: number | null): Channel => ({
    name,
    quantity,
    unit,
    scale: 1,
    samples,
    gaps,
    stepSize,
    coupling: input.coupling,
    probeRatio: input.probeRatio,
    bits: input.bits,
  });
  if (isCounts && scale === null) {
    return { channel: built('other', 'counts', null), isUnitAssumed: false, isUnscaledCounts: true };
  }
  if (scale !== null) {
    for (let i = 0; i < samples.length; i++) {
      samples[i] = (samples[i]! - scale.reference) * scale.perCount + scale.origin;
    }
    const quantity = scale.unit === 'V' ? 'voltage' : 'current';
    const channel = built(quantity, scale.unit, Math.abs(scale.perCount));
    return { channel, isUnitAssumed: false, isUnscaledCounts: false };
  }
  const factor = column.unit?.factor ?? 1;
  if (factor !== 1) for (let i = 0; i < samples.length; i++) samples[i]! *= factor;
  const isUnitAssumed = column.isAssumed && column.role !== 'other';
  if (column.role === 'voltage' || column.role === 'current') {
    const unit = column.role === 'voltage' ? 'V' : 'A';
    return { channel: built(column.role, unit, input.stepSize), isUnitAssumed, isUnscaledCounts: false };
  }
  return {
    channel: built('other', column.unit?.symbol ?? '', null),
    isUnitAssumed: false,
    isUnscaledCounts: false,
  };
}

/** Whether a column whose head calls it no voltage holds a converter's codes. */
function isBareCounts(column: ValueColumn, samples: Float64Array, hasScale: boolean): boolean {
  if (column.role !== 'voltage' || column.isUnitInHeader || nameSays(column.name) !== 'silent') return false;
  if (hasScale) return samples.every((sample) => Number.isNaN(sample) || Number.isInteger(sample));
  return column.isAssumed && isConverterCounts(samples);
}
