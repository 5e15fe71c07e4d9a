import { rowsOf } from './rowsOf.ts';
import { valueCells } from './valueCells.ts';
import type { WrittenCapture } from './writtenCapture.ts';

/** Nothing but values, a column a channel; the comment, if any, is a line of its own above. */
export function valuesText(capture: WrittenCapture): string[] {
  const { comment } = capture;
  return [...(comment === undefined ? [] : [`# ${comment}`]), ...rowsOf(valueCells(capture), ',')];
}
