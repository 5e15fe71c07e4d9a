import type { Channel, Quantity } from '../capture.ts';
import type { ValueColumn } from '../columns/layColumns.ts';
import { nameSays } from '../head/nameSays.ts';
import type { Setting } from '../head/setting.ts';
import { countScale, isScaleStated } from './countScale.ts';
import { gapsOf } from './gapsOf.ts';
import { inputSettings } from './inputSettings.ts';
import { wholeNumbers } from './wholeNumbers.ts';

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
  const isCounts = column.role === 'counts' || isBareCounts(column, samples, settings);
  const scale = isCounts ? countScale(settings, column.place) : null;
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

/** Whether a column that no header calls a voltage holds a converter's codes. */
function isBareCounts(column: ValueColumn, samples: Float64Array, settings: readonly Setting[]): boolean {
  if (column.role !== 'voltage' || column.isUnitInHeader || nameSays(column.name) !== 'silent') return false;
  const { mayBeCounts, areLikelyCounts } = wholeNumbers(samples);
  // A unit and a scale among the settings belong to the scaled value, not to whole numbers.
  if (isScaleStated(settings, column.place)) return mayBeCounts;
  return column.isAssumed && areLikelyCounts;
}
