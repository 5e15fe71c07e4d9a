import { decimalExponent, powerOfTen } from '../base/elementary.ts';

/** Comma, one header row with units in brackets, time in s. */
export function commaText(capture: WrittenCapture): string[] {
  const { channels, comment } = capture;
  return [
    ...(comment === undefined ? [] : [`Remark,${quotedCell(comment)}`]),
    ['Time (s)', ...channels.map(({ name, unit }) => `${name} (${unit})`)].join(','),
    ...rowsOf([timeCells(capture, 1), ...valueCells(capture)], ','),
  ];
}

/** Semicolon, decimal comma, units in a row of their own, time in ms. */
export function semicolonText(capture: WrittenCapture): string[] {
  const { channels, comment } = capture;
  return [
    ...(comment === undefined ? [] : [`Remark;${quotedCell(comment)}`]),
    ['Time', ...channels.map(({ name }) => name)].join(';'),
    ['(ms)', ...channels.map(({ unit }) => `(${unit})`)].join(';'),
    '',
    ...rowsOf([timeCells(capture, 1000), ...valueCells(capture)], ';').map((row) => row.replaceAll('.', ',')),
  ];
}

/** Tab, one header row with units after a slash, time in s. */
export function tabText(capture: WrittenCapture): string[] {
  const { channels, comment } = capture;
  return [
    ...(comment === undefined ? [] : [`Remark\t${comment.replaceAll('\t', ' ')}`]),
    ['time / s', ...channels.map(({ name, unit }) => `${name} / ${unit}`)].join('\t'),
    ...rowsOf([timeCells(capture, 1), ...valueCells(capture)], '\t'),
  ];
}

/** Nothing but values, a column a channel; the comment, if any, is a line of its own above. */
export function valuesText(capture: WrittenCapture): string[] {
  const { comment } = capture;
  return [...(comment === undefined ? [] : [`# ${comment}`]), ...rowsOf(valueCells(capture), ',')];
}

/** Columns lined up with runs of blanks, the comment after a number sign, no header, time in s. */
export function blanksText(capture: WrittenCapture): string[] {
  const columns = [timeCells(capture, 1), ...valueCells(capture)].map((cells) => {
    const width = cells.reduce((most, cell) => Math.max(most, cell.length), 0);
    return cells.map((cell) => cell.padStart(width));
  });
  return [...(capture.comment === undefined ? [] : [`# ${capture.comment}`]), ...rowsOf(columns, '   ')];
}

/** Comma, a column that counts the samples, their interval in the preamble. */
export function indexText(capture: WrittenCapture): string[] {
  const { channels, intervalS, comment } = capture;
  const counts = Array.from(channels[0].samples, (_, i) => String(i));
  return [
    ...(comment === undefined ? [] : [`Remark,${quotedCell(comment)}`]),
    `Samples,${counts.length}`,
    `Sample interval (s),${intervalS.toExponential(9)}`,
    ['Index', ...channels.map(({ name, unit }) => `${name} (${unit})`)].join(','),
    ...rowsOf([counts, ...valueCells(capture)], ','),
  ];
}

/** Comma, a column that counts the samples, start and increment in s on the two header rows. */
export function incrementText(capture: WrittenCapture): string[] {
  const { channels, startS, intervalS, comment } = capture;
  const counts = Array.from(channels[0].samples, (_, i) => String(i));
  return [
    ...(comment === undefined ? [] : [`Remark,${quotedCell(comment)}`]),
    ['Index', ...channels.map(({ name }) => name), 'Start', 'Increment'].join(','),
    [
      'Sequence',
      ...channels.map(({ unit }) => unit),
      startS.toExponential(9),
      intervalS.toExponential(9),
    ].join(','),
    ...rowsOf([counts, ...valueCells(capture)], ',').map((row) => `${row},,`),
  ];
}

/** Comma, lines of key and value first (interval, start, vertical settings), then names, then time in s. */
export function preambleText(capture: WrittenCapture): string[] {
  const { channels, startS, intervalS, comment } = capture;
  const perChannel = (key: string, value: (samples: Float64Array, unit: string) => string): string =>
    [key, ...channels.map(({ samples, unit }) => value(samples, unit))].join(',');
  return [
    ...(comment === undefined ? [] : [`Remark,${quotedCell(comment)}`]),
    `Record length,${channels[0].samples.length}`,
    `Sample interval,${intervalS.toExponential(9)}`,
    'Horizontal unit,s',
    `Horizontal start,${startS.toExponential(9)}`,
    perChannel('Vertical unit', (_, unit) => unit),
    perChannel('Vertical scale', (samples) => String(scalePerDivision(samples))),
    perChannel('Vertical position', () => '0'),
    '',
    ['Time', ...channels.map(({ name }) => name)].join(','),
    ...rowsOf([timeCells(capture, 1), ...valueCells(capture)], ','),
  ];
}

/** The 1, 2 or 5 times a power of ten at which the values fit into four divisions each way. */
function scalePerDivision(samples: Float64Array): number {
  const least = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0) / 4;
  if (least === 0) return 1;
  const power = powerOfTen(decimalExponent(least));
  return ([1, 2, 5].find((factor) => factor * power >= least) ?? 10) * power;
}

/** A text cell in double quotes, a quote within doubled. @see RFC 4180, section 2 */
function quotedCell(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/**
 * Columns of cells as the lines of a file.
 *
 * @param columns - all of one length.
 */
function rowsOf(columns: readonly (readonly string[])[], delimiter: string): string[] {
  return (columns[0] ?? []).map((_, row) => columns.map((column) => column[row]).join(delimiter));
}

/**
 * The times of the samples as text.
 *
 * @param perSecond - units a second: 1 for s, 1000 for ms.
 */
function timeCells({ channels, startS, intervalS }: WrittenCapture, perSecond: number): string[] {
  const decimals = timeDecimals(intervalS * perSecond);
  return Array.from(channels[0].samples, (_, i) => ((startS + i * intervalS) * perSecond).toFixed(decimals));
}

/**
 * How many decimals a time needs so that its rounding is under a thousandth of the interval.
 *
 * @param interval - positive, in the unit that the times are written in.
 */
export function timeDecimals(interval: number): number {
  return Math.max(0, 3 - decimalExponent(interval));
}

/** The values as text, one array a channel. */
function valueCells({ channels }: WrittenCapture): readonly (readonly string[])[] {
  return channels.map(({ samples }) => {
    const decimals = valueDecimals(samples);
    return Array.from(samples, (value) => value.toFixed(decimals));
  });
}

/** How many decimals give the largest of the values seven significant digits. */
export function valueDecimals(values: Float64Array): number {
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return largest === 0 ? 0 : Math.max(0, 6 - decimalExponent(largest));
}

/** A record to be written as an oscilloscope would save it. */
export interface WrittenCapture {
  /** At least one, all of one length. */
  readonly channels: readonly [WrittenChannel, ...WrittenChannel[]];
  /** Time of sample 0. */
  readonly startS: number;
  /** Positive. */
  readonly intervalS: number;
  /** A free line that the file carries above its numbers; may hold any character but a line end. */
  readonly comment?: string;
}

export interface WrittenChannel {
  readonly name: string;
  /** As it is to stand in the file: `V`, `A`. */
  readonly unit: string;
  readonly samples: Float64Array;
}
