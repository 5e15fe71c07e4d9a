import type { Limit } from '../../verdict/measureDocument.ts';
import { decimalText } from './decimalText.ts';

/**
 * A value to be read beside its limit: one decimal more than the limit has, but two for a value under
 * 1, two at most, and one from 100 up, and as many more (at most
 * three) as it takes to show on which side of the limit it lies.
 *
 * @example besideLimit(600, { min: 600 }) // "600"
 * @example besideLimit(0.5004, { max: 0.5 }) // "0.5004"
 * @example besideLimit(6.213, { max: 8 }) // "6.2"
 */
export function besideLimit(value: number, limit: Limit): string {
  const bounds = [limit.min, limit.max].filter((bound) => bound !== undefined);
  if (bounds.length === 0) return decimalText(value, Math.abs(value) < 10 ? 2 : 1);
  if (bounds.includes(value)) return decimalText(value, decimalsOf(value));
  const size = Math.abs(value);
  const first = size < 1 ? 2 : Math.min(Math.max(...bounds.map(decimalsOf)) + 1, size < 100 ? 2 : 1);
  for (let decimals = first; decimals < first + 3; decimals++) {
    const rounded = Number(value.toFixed(decimals));
    if (bounds.every((bound) => Math.sign(rounded - bound) === Math.sign(value - bound))) {
      return decimalText(value, decimals);
    }
  }
  return decimalText(value, first + 3);
}

/** Digits after the point that a limit is written with: 0.5 has one, 8 has none, a formula's value two. */
function decimalsOf(bound: number): number {
  const digits = String(bound).split('.')[1]?.length ?? 0;
  return Math.min(digits, 2);
}
