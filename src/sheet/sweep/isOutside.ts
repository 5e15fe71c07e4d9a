import type { LimitLine, LoadPoint } from './quantityAgainstLoad.ts';

/** True where a point's value lies beyond one of the limits. */
export function isOutside({ figure }: LoadPoint, limits: readonly LimitLine[]): boolean {
  return limits.some(({ value, side }) => (side === 'max' ? figure.value > value : figure.value < value));
}
