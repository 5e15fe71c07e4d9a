import { columnResolution } from '../bytes/columnResolution.ts';
import { decodeText } from '../bytes/decodeText.ts';
import { endsInCutRow } from '../bytes/endsInCutRow.ts';
import { locateTable } from '../bytes/locateTable.ts';
import { scanRows } from '../bytes/scanRows.ts';
import type { Capture } from './capture.ts';
import { buildChannels } from './channels/buildChannels.ts';
import { chooseColumns } from './columns/chooseColumns.ts';
import { layColumns } from './columns/layColumns.ts';
import { spectrumError } from './columns/spectrumError.ts';
import { describeLayout } from './describeLayout.ts';
import { acquisitionSetting } from './head/acquisitionSetting.ts';
import { inventedNotice } from './head/inventedNotice.ts';
import { readHead } from './head/readHead.ts';
import { timeSettings } from './head/timeSettings.ts';
import { recordRows } from './rows/recordRows.ts';
import { captureTimeBase } from './time/captureTimeBase.ts';

export interface ReadCaptureOptions {
  /** Samples per second, for a file that has no time of its own. */
  readonly sampleRateHz?: number;
}

/**
 * Reads an oscilloscope's or logger's export, whatever its layout: text, table, head, columns, rows,
 * time, channels, each step knowing only what the one before it found.
 *
 * @param bytes - the whole file. Not changed.
 * @returns a checked capture; what is doubtful about it stands in its notices.
 * @throws MeasureError where it can't be read: `file.empty`, `file.foreign`, `file.binary`,
 * `file.spectrum`, `rows.none`, `rows.few`, `rows.malformed`, `time.none`, `time.still`,
 * `time.backwards`, `time.uneven`, `channels.none`, `values.none`.
 * @throws RangeError where the sample rate is not positive and finite.
 */
export function readCapture(bytes: Uint8Array, options: ReadCaptureOptions = {}): Capture {
  const { sampleRateHz } = options;
  if (sampleRateHz !== undefined && !(sampleRateHz > 0 && sampleRateHz < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`sampleRateHz must be positive and finite, not ${sampleRateHz}`);
  }
  const { text, encoding } = decodeText(bytes);
  const table = locateTable(text);
  const head = readHead(table);
  const scanned = scanRows(text, table);

  const hasInterval = timeSettings(head.settings).intervalS !== null || sampleRateHz !== undefined;
  const blocks = layColumns(table, head, scanned.columns, hasInterval);
  const { axis, values, keysTo, notices } = chooseColumns(blocks, scanned.columns, head.textColumnNames);
  const axisRows = axis.column === null ? null : scanned.columns[axis.column.index]!;
  const valueRows = values.map((column) => scanned.columns[column.index]!);

  const record = recordRows(scanned, {
    isCut: endsInCutRow(text, table),
    stamps: axisRows,
    values: valueRows,
    headerText: table.head.at(-1)?.text ?? null,
    firstLine: table.bodyLine,
  });
  const stamps = axisRows?.subarray(0, record.rowCount) ?? null;

  const settings = head.settings.filter((setting) => setting.column <= keysTo);
  const times = timeSettings(settings);
  if (times.isSpectrum) throw spectrumError('a horizontal axis in hertz');
  const time = captureTimeBase({
    axis,
    stamps,
    rowCount: record.rowCount,
    resolution: axis.column === null ? 0 : columnResolution(text, table, axis.column.column),
    settings: times,
    keptOnChange: record.keptOnChange,
    textColumnNames: head.textColumnNames,
    sampleRateHz,
    lineOfRow: scanned.lineOfRow,
  });
  const rows = valueRows.map((column) => column.subarray(0, record.rowCount));
  const built = buildChannels(values, rows, stamps, time.timeBase, settings);
  const { startS, intervalS, sampleCount } = time.timeBase;
  return {
    channels: built.channels,
    sampleCount,
    startS,
    intervalS,
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
