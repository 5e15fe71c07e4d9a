import { quotedCell } from './quotedCell.ts';
import { rowsOf } from './rowsOf.ts';
import { valueCells } from './valueCells.ts';
import type { WrittenCapture } from './writtenCapture.ts';

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
