import type { Capture, Channel } from './capture.ts';
import { buildChannels } from './channels/buildChannels.ts';
import type { FileLayout } from './chunks/readingPlan.ts';
import type { ChosenColumns } from './columns/chooseColumns.ts';
import type { AxisColumn } from './columns/columnRole.ts';
import { inventedNotice } from './head/readHead.ts';
import { acquisitionSetting } from './head/settings.ts';
import { timeSettings } from './head/timeSettings.ts';
import type { ReadNotice } from './notices.ts';
import { readError } from './readErrors.ts';
import type { Encoding } from './text/decodeText.ts';
import type { Dialect } from './text/dialect.ts';
import type { TimeBase } from './time/arrangeSamples.ts';
import { captureTimeBase } from './time/captureTimeBase.ts';

/** The rows of one record, and what tells their time. */
interface RecordColumns {
  readonly rowCount: number;
  /** One array a channel, shape rowCount; scaled in place. */
  readonly values: readonly Float64Array[];
  /** The axis column, shape rowCount; null where there is none, or its line alone is known. */
  readonly stamps: Float64Array | null;
  /** As `captureTimeBase` takes it. */
  readonly layRows: ((resolution: number) => TimeBase) | null;
  readonly notices: readonly ReadNotice[];
}

/**
 * A capture from the rows of a record, once it is settled which they are.
 *
 * @throws MeasureError `file.spectrum`, `time.none`, `time.still`, `time.uneven`, `channels.none`, `values.none`.
 */
export function captureOfRecord(
  { table, head, encoding, digitsOf, sampleRateHz }: FileLayout,
  { axis, values, keysTo, notices }: ChosenColumns,
  record: RecordColumns,
): Capture {
  const settings = head.settings.filter((setting) => setting.column <= keysTo);
  const times = timeSettings(settings);
  if (times.isSpectrum) throw readError('file.spectrum', { axis: null });
  const time = captureTimeBase({
    axis,
    layRows: record.layRows,
    rowCount: record.rowCount,
    resolution: axis.column === null ? 0 : digitsOf(axis.column.column).resolution,
    settings: times,
    textColumnNames: head.textColumnNames,
    sampleRateHz,
  });
  const built = buildChannels(values, record.values, record.stamps, time.timeBase, settings);
  const { startS, intervalS, sampleCount, intervalWithin } = time.timeBase;
  return {
    channels: built.channels,
    sampleCount,
    startS,
    intervalS,
    ...(intervalWithin === undefined ? {} : { intervalWithin }),
    layout: describeLayout(table.dialect, encoding, head.headerRowCount, axis, built.channels),
    acquisition: acquisitionSetting(settings),
    notices: [
      ...inventedNotice([...table.head, ...table.beside]),
      ...notices,
      ...record.notices,
      ...time.notices,
      ...built.notices,
    ],
    ...(built.impliedScales.length === 0 ? {} : { impliedScales: built.impliedScales }),
  };
}

const DELIMITER_WORDS = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
  blanks: 'blanks',
} as const;

/**
 * The layout that was recognised, in one line of words.
 *
 * @example 'comma, 2 header rows, time in s, 2 channels in V'
 */
function describeLayout(
  dialect: Dialect,
  encoding: Encoding,
  headerRowCount: number,
  axis: AxisColumn,
  channels: readonly Channel[],
): string {
  const units = new Map<string, number>();
  for (const { unit } of channels) units.set(unit, (units.get(unit) ?? 0) + 1);
  const parts = [
    DELIMITER_WORDS[dialect.delimiter],
    dialect.decimalMark === ',' ? 'decimal comma' : '',
    encoding === 'utf-8' ? '' : encoding.toUpperCase(),
    headerRowCount === 0
      ? 'no header row'
      : `${headerRowCount} header ${headerRowCount === 1 ? 'row' : 'rows'}`,
    axisWords(axis),
    ...[...units].map(([unit, count]) => channelWords(unit, count)),
  ];
  return parts.filter((part) => part !== '').join(', ');
}

function axisWords({ kind, column }: AxisColumn): string {
  if (kind === 'rows') return 'no time column';
  if (kind === 'index') return 'numbered rows';
  const factor = column?.unit?.factor ?? 1;
  const prefix = { 1: '', 0.001: 'm', 1e-6: 'µ', 1e-9: 'n', 1e-12: 'p' }[factor] ?? '';
  return `time in ${prefix}s`;
}

function channelWords(unit: string, count: number): string {
  return `${count} ${count === 1 ? 'channel' : 'channels'} ${unit === '' ? 'without a unit' : `in ${unit}`}`;
}
