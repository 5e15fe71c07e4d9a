import { MeasureError } from '../../base/measureError.ts';
import type { Notice } from '../../base/notice.ts';
import type { Channel } from '../capture.ts';
import type { ValueColumn } from '../columns/layColumns.ts';
import type { Setting } from '../head/setting.ts';
import { arrangeSamples } from '../time/arrangeSamples.ts';
import type { TimeBase } from '../time/rowArrangement.ts';
import { type BuiltChannel, buildChannel } from './buildChannel.ts';
import { channelNotices } from './channelNotices.ts';
import { checkResampling } from './checkResampling.ts';
import { gapsOf } from './gapsOf.ts';
import { settleOverRange } from './overRange.ts';
import { uniqueNames } from './uniqueNames.ts';

export interface BuiltChannels {
  readonly channels: readonly [Channel, ...Channel[]];
  readonly notices: readonly Notice[];
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
  if (columns.length === 0) {
    throw new MeasureError('channels.none', 'The file has a time column and no channel beside it.', {
      expected: 'a column of volts or amperes',
      received: 'a column of time alone',
      advice: 'switch the channel on and save the waveform again',
    });
  }
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
  if (first === undefined) {
    throw new MeasureError('values.none', 'No channel holds more than a few numbers.', {
      expected: 'numbers in the columns of the channels',
      received: 'nan, blanks, stars or marks for a range that was exceeded in nearly every row',
      advice: 'check that the channel was on and its range not exceeded, and save the waveform again',
    });
  }
  const emptyNames = names.filter((_, k) => !isWithValues[k]);
  return {
    channels: [first.channel, ...others.map((other) => other.channel)],
    notices: channelNotices([first, ...others], emptyNames, timeBase, bend),
  };
}

/** As few rows as make a record: fewer values than that are no wave, nor a direct voltage. */
const LEAST_VALUES = 16;

function holdsValues(column: Float64Array): boolean {
  let count = 0;
  return column.some((value) => Number.isFinite(value) && ++count >= LEAST_VALUES);
}
