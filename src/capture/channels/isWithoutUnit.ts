import type { Channel } from '../capture.ts';

/** True of a channel in bare counts or in nothing: a ratio makes a voltage of it. */
export function isWithoutUnit({ quantity, unit }: Channel): boolean {
  return quantity === 'other' && (unit === '' || unit === 'counts');
}
