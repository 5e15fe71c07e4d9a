import { rowsOf } from './rowsOf.ts';
import { timeCells } from './timeCells.ts';
import { valueCells } from './valueCells.ts';
import type { WrittenCapture } from './writtenCapture.ts';

/** Tab, one header row with units after a slash, time in s. */
export function tabText(capture: WrittenCapture): string[] {
  const { channels, comment } = capture;
  return [
    ...(comment === undefined ? [] : [`Remark\t${comment.replaceAll('\t', ' ')}`]),
    ['time / s', ...channels.map(({ name, unit }) => `${name} / ${unit}`)].join('\t'),
    ...rowsOf([timeCells(capture, 1), ...valueCells(capture)], '\t'),
  ];
}
