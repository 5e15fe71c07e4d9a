import type { Notice } from '../../base/notice.ts';
import type { Capture } from '../capture.ts';
import { buildChannels } from '../channels/buildChannels.ts';
import type { ChosenColumns } from '../columns/chooseColumns.ts';
import { spectrumError } from '../columns/spectrumError.ts';
import { describeLayout } from '../describeLayout.ts';
import { acquisitionSetting } from '../head/acquisitionSetting.ts';
import { inventedNotice } from '../head/inventedNotice.ts';
import { timeSettings } from '../head/timeSettings.ts';
import { captureTimeBase } from '../time/captureTimeBase.ts';
import type { TimeBase } from '../time/rowArrangement.ts';
import type { FileLayout } from './fileLayout.ts';

/** The rows of one record, and what tells their time. */
export interface RecordColumns {
  readonly rowCount: number;
  /** One array a channel, shape rowCount; scaled in place. */
  readonly values: readonly Float64Array[];
  /** The axis column, shape rowCount; null where there is none, or its line alone is known. */
  readonly stamps: Float64Array | null;
  /** As `captureTimeBase` takes it. */
  readonly layRows: ((resolution: number) => TimeBase) | null;
  readonly notices: readonly Notice[];
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
  if (times.isSpectrum) throw spectrumError('a horizontal axis in hertz');
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
  };
}
