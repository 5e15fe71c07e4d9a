import { MeasureError } from '../base/measureError.ts';
import type { Notice } from '../base/notice.ts';
import { columnResolution } from '../bytes/columnResolution.ts';
import { decodeText } from '../bytes/decodeText.ts';
import { endsInCutRow } from '../bytes/endsInCutRow.ts';
import { locateTable } from '../bytes/locateTable.ts';
import { scanRows } from '../bytes/scanRows.ts';
import type { Capture } from './capture.ts';
import { buildChannels } from './channels/buildChannels.ts';
import { chooseColumns } from './columns/chooseColumns.ts';
import { layColumns } from './columns/layColumns.ts';
import { describeLayout } from './describeLayout.ts';
import { acquisitionSetting } from './head/acquisitionSetting.ts';
import { readHead } from './head/readHead.ts';
import { timeSettings } from './head/timeSettings.ts';
import { checkRows } from './rows/checkRows.ts';
import { trimRows } from './rows/trimRows.ts';
import { captureTimeBase } from './time/captureTimeBase.ts';
import { firstSegment } from './time/firstSegment.ts';

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
  const { lineOfRow } = scanned;

  const hasInterval = timeSettings(head.settings).intervalS !== null || sampleRateHz !== undefined;
  const blocks = layColumns(table, head, scanned.columns, hasInterval);
  const chosen = chooseColumns(blocks, scanned.columns, head.textColumnNames);
  const { axis } = chosen;
  const kept = chosen.values.map((column) => scanned.columns[column.index]!);
  const allStamps = axis.column === null ? null : scanned.columns[axis.column.index]!;

  const trimmed = trimRows(
    scanned,
    endsInCutRow(text, table),
    allStamps === null ? kept : [allStamps, ...kept],
  );
  const segment = firstSegment(
    trimmed.rowCount,
    allStamps?.subarray(0, trimmed.rowCount) ?? null,
    trimmed.malformed,
    table.head.at(-1)?.text ?? null,
    lineOfRow,
  );
  const malformed = trimmed.malformed.filter((row) => row.row < segment.rowCount);
  const malformedNotices = checkRows(segment.rowCount, malformed, table.bodyLine);

  const settings = head.settings.filter((setting) => setting.column <= chosen.keysTo);
  const times = timeSettings(settings);
  if (times.isSpectrum) {
    throw new MeasureError('file.spectrum', 'The file is a spectrum, not a waveform.', {
      expected: 'a voltage against time',
      received: 'a horizontal axis in hertz',
      advice: 'switch the math or FFT trace off and save the voltage channel itself',
    });
  }
  const stamps = allStamps?.subarray(0, segment.rowCount) ?? null;
  const { timeBase, notices: timeNotices } = captureTimeBase({
    axis,
    stamps,
    rowCount: segment.rowCount,
    resolution: axis.column === null ? 0 : columnResolution(text, table, axis.column.column),
    settings: times,
    sampleRateHz,
    lineOfRow,
  });
  const built = buildChannels(
    chosen.values,
    kept.map((column) => column.subarray(0, segment.rowCount)),
    stamps,
    timeBase,
    settings,
  );
  const notices: Notice[] = [
    ...segmentNotices(segment.segmentCount),
    ...chosen.notices,
    ...cutNotices(trimmed.droppedCount),
    ...malformedNotices,
    ...timeNotices,
    ...built.notices,
  ];
  return {
    channels: built.channels,
    sampleCount: timeBase.sampleCount,
    startS: timeBase.startS,
    intervalS: timeBase.intervalS,
    layout: describeLayout(table.dialect, encoding, head.headerRowCount, axis, built.channels),
    acquisition: acquisitionSetting(settings),
    notices,
  };
}

function segmentNotices(count: number): Notice[] {
  if (count === 1) return [];
  return [
    {
      code: 'segments.first',
      message: `The file holds ${count} records one after the other: the first is read.`,
    },
  ];
}

function cutNotices(count: number): Notice[] {
  if (count === 0) return [];
  const lines = count === 1 ? 'The last line is' : `The last ${count} lines are`;
  return [{ code: 'rows.cut', message: `${lines} cut off or no row of numbers, and left out.` }];
}
