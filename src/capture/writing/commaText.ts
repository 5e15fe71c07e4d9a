import { quotedCell } from './quotedCell.ts';
import { rowsOf } from './rowsOf.ts';
import { timeCells } from './timeCells.ts';
import { valueCells } from './valueCells.ts';
import type { WrittenCapture } from './writtenCapture.ts';

/** Comma, one header row with units in brackets, time in s. */
export function commaText(capture: WrittenCapture): string[] {
  const { channels, comment } = capture;
  return [
    ...(comment === undefined ? [] : [`Remark,${quotedCell(comment)}`]),
    ['Time (s)', ...channels.map(({ name, unit }) => `${name} (${unit})`)].join(','),
    ...rowsOf([timeCells(capture, 1), ...valueCells(capture)], ','),
  ];
}
