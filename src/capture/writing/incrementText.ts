import { quotedCell } from './quotedCell.ts';
import { rowsOf } from './rowsOf.ts';
import { valueCells } from './valueCells.ts';
import type { WrittenCapture } from './writtenCapture.ts';

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
