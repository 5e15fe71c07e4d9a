import { type Channel, gapsOf, type OverRange } from '../capture.ts';
import type { ValueColumn } from '../columns/layColumns.ts';
import type { Setting } from '../head/settings.ts';
import type { ReadNotice } from '../notices.ts';
import { readError } from '../readErrors.ts';
import { arrangeSamples, type TimeBase } from '../time/arrangeSamples.ts';
import { type BuiltChannel, buildChannel } from './buildChannel.ts';
import { settleOverRange } from './overRange.ts';

interface BuiltChannels {
  readonly channels: readonly [Channel, ...Channel[]];
  readonly notices: readonly ReadNotice[];
  /** Names of channels that the notice `scale.implied` proposes a ratio for. */
  readonly impliedScales: readonly string[];
}

/**
 * The channels of a record on its time base.
 *
 * @param rows - one array a column of values, shape rowCount; its numbers may be changed.
 * @throws MeasureError `channels.none` where no column holds values; `values.none` where none of
 * them holds more than a few numbers; `time.uneven` where resampling would invent the wave.
 */
export function buildChannels(
  columns: readonly ValueColumn[],
  rows: readonly Float64Array[],
  stamps: Float64Array | null,
  timeBase: TimeBase,
  settings: readonly Setting[],
): BuiltChannels {
  if (columns.length === 0) throw readError('channels.none', {});
  const names = uniqueNames(columns);
  const isWithValues = rows.map(holdsValues);
  const built: BuiltChannel[] = [];
  let bend = 0;
  columns.forEach((column, k) => {
    if (!isWithValues[k]) return;
    const name = names[k]!;
    const values = rows[k]!;
    // Lines between samples need ends.
    if (timeBase.arrangement.kind === 'resampled') settleOverRange(values, gapsOf(values));
    if (timeBase.arrangement.kind === 'resampled' && column.role !== 'other') {
      const present = stamps === null ? values : values.filter((_, row) => !Number.isNaN(stamps[row]!));
      bend = Math.max(bend, checkResampling(timeBase.arrangement.offsetsS, present, name));
    }
    built.push(buildChannel(column, name, arrangeSamples(values, timeBase, stamps), settings));
  });
  const [first, ...others] = built;
  if (first === undefined) throw readError('values.none', {});
  const emptyNames = names.filter((_, k) => !isWithValues[k]);
  return {
    channels: [first.channel, ...others.map((other) => other.channel)],
    notices: channelNotices([first, ...others], emptyNames, timeBase, bend),
    impliedScales: built.filter(isImplied).map(({ channel }) => channel.name),
  };
}

/** Whether the head gives a ratio for whole numbers that may be a converter's codes. */
function isImplied({ implied, isUnscaledCounts }: BuiltChannel): boolean {
  return implied !== null && !isUnscaledCounts;
}

/** As few rows as make a record: fewer values than that are no wave, nor a direct voltage. */
const LEAST_VALUES = 16;

function holdsValues(column: Float64Array): boolean {
  let count = 0;
  return column.some((value) => Number.isFinite(value) && ++count >= LEAST_VALUES);
}

/**
 * Names for channels, each different: an empty one becomes `column 3` after its place in the file, a
 * repeated one gets its number behind it.
 *
 * @param columns - names as the file has them, and 0-based file columns.
 */
export function uniqueNames(
  columns: readonly { readonly name: string; readonly column: number }[],
): string[] {
  const taken = new Set<string>();
  return columns.map(({ name, column }) => {
    const wanted = name === '' ? `column ${column + 1}` : name;
    let free = wanted;
    for (let number = 2; taken.has(free); number++) free = `${wanted} (${number})`;
    taken.add(free);
    return free;
  });
}

/** What a person must know about the channels before trusting a figure of them. */
function channelNotices(
  built: readonly BuiltChannel[],
  emptyNames: readonly string[],
  timeBase: TimeBase,
  bendRatio: number,
): ReadNotice[] {
  const names = (pick: (channel: BuiltChannel) => boolean): readonly string[] =>
    built.filter(pick).map(({ channel }) => channel.name);
  const hints = (pick: (channel: BuiltChannel) => boolean) =>
    built
      .filter(pick)
      .flatMap(({ channel, implied }) => (implied === null ? [] : [{ channel: channel.name, ...implied }]));
  const notices: ReadNotice[] = [];
  const volts = names(({ isUnitAssumed, channel }) => isUnitAssumed && channel.quantity === 'voltage');
  const amperes = names(({ isUnitAssumed, channel }) => isUnitAssumed && channel.quantity === 'current');
  if (volts.length + amperes.length > 0) notices.push({ code: 'unit.assumed', volts, amperes });
  const counts = names(({ isUnscaledCounts }) => isUnscaledCounts);
  if (counts.length > 0) {
    const own = hints((one) => one.isUnscaledCounts);
    notices.push({ code: 'counts.unscaled', channels: counts, hints: own });
  }
  const whole = names(isImplied);
  if (whole.length > 0) {
    const own = hints((one) => !one.isUnscaledCounts);
    notices.push({ code: 'scale.implied', channels: whole, hints: own });
  }
  if (emptyNames.length > 0) {
    notices.push({ code: 'columns.skipped', why: 'empty', names: emptyNames });
  }
  for (const { channel } of built) {
    const { overRange } = channel;
    if (overRange !== undefined) notices.push(overRangeNotice(channel, overRange));
    if (channel.gaps.length === 0) continue;
    const missing = channel.gaps.reduce((sum, gap) => sum + gap.to - gap.from, 0);
    const { name, gaps, samples } = channel;
    notices.push({ code: 'gaps.found', channel: name, gaps: gaps.length, missing, samples: samples.length });
  }
  if (timeBase.arrangement.kind === 'held') {
    notices.push({ code: 'time.uneven', rows: 'kept on change' });
  }
  if (timeBase.arrangement.kind === 'resampled') {
    notices.push({ code: 'time.uneven', rows: 'uneven', bendPercent: 100 * bendRatio });
  }
  return notices;
}

function overRangeNotice(
  { name, unit, samples }: Channel,
  { sampleCount, top, bottom }: OverRange,
): ReadNotice {
  return {
    ...{ code: 'wave.overRange', channel: name, unit, marked: sampleCount, samples: samples.length },
    ends: [top, bottom].filter((end) => end !== null),
  };
}

/** Of the channel's span: how far a sample may lie from the straight line between its neighbours. */
const LARGEST_BEND = 0.02;

/**
 * Refuses to resample where straight lines between the samples would invent the wave.
 *
 * What is honest: each sample is foretold from its two neighbours. Where that misses by at most 2 % of the
 * span, no place in the record bends more between neighbours twice as far apart as those that are really
 * used, so the lines miss by about a quarter of that, half a per cent. It does not hold for rows kept only
 * where the value changed: across a plateau the line would turn the edge behind it into a ramp, and the
 * last sample of the plateau is missed by the whole edge.
 *
 * @param timesS - shape N, ascending.
 * @param values - shape N, NaN where missing.
 * @returns the largest miss, as a share of the span, 0 and up.
 * @throws MeasureError `time.uneven`.
 */
function checkResampling(timesS: Float64Array, values: Float64Array, name: string): number {
  let least = Number.POSITIVE_INFINITY;
  let largest = Number.NEGATIVE_INFINITY;
  let miss = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (value < least) least = value;
    if (value > largest) largest = value;
    const before = timesS[i]! - (timesS[i - 1] ?? Number.NaN);
    const width = (timesS[i + 1] ?? Number.NaN) - timesS[i]! + before;
    const foretold = values[i - 1]! + ((values[i + 1]! - values[i - 1]!) * before) / width;
    const off = Math.abs(value - foretold);
    if (off > miss) miss = off;
  }
  const share = largest > least ? miss / (largest - least) : 0;
  if (share > LARGEST_BEND) throw readError('time.uneven', { channel: name });
  return share;
}
