import { type Channel, gapsOf, type OverRange, type Quantity } from '../capture.ts';
import type { ValueColumn } from '../columns/layColumns.ts';
import { type ChannelPlace, channelSetting, nameSays } from '../head/names.ts';
import { type Setting, settingValue } from '../head/settings.ts';
import { type CountScale, countScale, impliedScale, isScaleStated } from './countScale.ts';
import { settleOverRange } from './overRange.ts';

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

/** Beyond this no probe on a bench reads: whole numbers so large are codes. */
const LARGEST_PLAUSIBLE = 2000;
const LEAST_LEVELS = 16;

/** What whole numbers say about being codes of a converter. */
interface WholeNumbers {
  /** Whole numbers of many levels that are not multiples of a common step, as rounded volts would be. */
  readonly mayBeCounts: boolean;
  /** Besides, none is negative (an AC wave in volts has negative values), or some are too large for volts. */
  readonly areLikelyCounts: boolean;
}

/** @param samples - NaN where missing. */
function wholeNumbers(samples: Float64Array): WholeNumbers {
  const levels = new Set<number>();
  let least = Number.POSITIVE_INFINITY;
  let largest = 0;
  let step = 0;
  for (const sample of samples) {
    if (Number.isNaN(sample)) continue;
    if (!Number.isInteger(sample)) return { mayBeCounts: false, areLikelyCounts: false };
    if (levels.size <= LEAST_LEVELS) levels.add(sample);
    least = Math.min(least, sample);
    largest = Math.max(largest, Math.abs(sample));
    step = commonDivisor(step, Math.abs(sample));
  }
  const mayBeCounts = levels.size > LEAST_LEVELS && step === 1;
  return { mayBeCounts, areLikelyCounts: mayBeCounts && (least >= 0 || largest > LARGEST_PLAUSIBLE) };
}

function commonDivisor(a: number, b: number): number {
  let [larger, smaller] = [a, b];
  while (smaller > 0) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}

/** How a channel's input was set, as far as the head says it. */
interface InputSettings {
  readonly coupling: 'AC' | 'DC' | null;
  readonly probeRatio: number | null;
  /** Smallest step, in V or A. */
  readonly stepSize: number | null;
  readonly bits: number | null;
}

const COUPLING = /^((input|vertical|y|channel) )?(coupling|coupl)$/;
const PROBE = /^(probe|attenuation|(probe|input) ?(atten\w*|ratio|scale|factor|gain))$/;
const STEP = /^((vertical|y|voltage) )?(resolution|step( size)?|lsb|increment)$/;
const BITS = /^((adc|vertical|y) )?(bits|resolution|bit depth|resolution bits|number of bits)$/;

function inputSettings(settings: readonly Setting[], place: ChannelPlace): InputSettings {
  const setting = (key: RegExp): Setting | null => channelSetting(settings, key, place);
  const coupling = /^\W*(ac|dc)/i.exec(setting(COUPLING)?.values[0] ?? '')?.[1]?.toUpperCase();
  // "Resolution" is a number of bits here and a step in volts there: the unit tells.
  const step = channelSetting(settings.filter(isInVoltsOrAmperes), STEP, place);
  const stepValue = step === null ? null : settingValue(step);
  return {
    coupling: coupling === 'AC' || coupling === 'DC' ? coupling : null,
    probeRatio: ratio(setting(PROBE)?.values[0] ?? ''),
    stepSize: stepValue === null ? null : Math.abs(stepValue.value * (stepValue.unit?.factor ?? 1)),
    bits: wholeBits(setting(BITS)?.values[0] ?? ''),
  };
}

function isInVoltsOrAmperes(setting: Setting): boolean {
  const dimension = settingValue(setting)?.unit?.dimension;
  return dimension === 'voltage' || dimension === 'current';
}

/** `10`, `10X`, `x10`, `10:1`, `1:10` are all ten. */
function ratio(text: string): number | null {
  const match = /^[x×]?\s*([\d.]+(?:e[+-]?\d+)?)\s*[x×]?(?::([\d.]+))?$/i.exec(text.trim());
  if (match === null) return null;
  const [a, b] = [Number(match[1]), Number(match[2] ?? 1)];
  const value = a >= b || match[2] === undefined ? a / b : b / a;
  return Number.isFinite(value) && value > 0 ? value : null;
}

function wholeBits(text: string): number | null {
  const match = /^(\d{1,2})(\s*-?bits?)?$/i.exec(text.trim());
  const bits = Number(match?.[1] ?? 0);
  return bits >= 4 && bits <= 32 ? bits : null;
}
