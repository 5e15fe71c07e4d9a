import { quotedCell } from './quotedCell.ts';
import { rowsOf } from './rowsOf.ts';
import { timeCells } from './timeCells.ts';
import { valueCells } from './valueCells.ts';
import type { WrittenCapture } from './writtenCapture.ts';

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
