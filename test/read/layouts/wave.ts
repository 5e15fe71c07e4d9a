/** Volts of an invented outlet: 325 V peak, 50 Hz, a fifth harmonic and some offset so that no two parts look alike. */
export function volts(timeS: number): number {
  const angle = 2 * Math.PI * 50 * timeS + 0.3;
  return Number((325 * Math.sin(angle) + 9 * Math.sin(5 * angle) + 1.2).toFixed(2));
}

/** Amperes of an invented load beside it. */
export function amperes(timeS: number): number {
  return Number((1.4 * Math.sin(2 * Math.PI * 50 * timeS - 0.2)).toFixed(3));
}

export const INTERVAL_S = 0.0002;
const ROWS = 200;
export const START_S = -0.0072;

/** Row numbers 0 to count − 1. */
export const rows = (count: number = ROWS): number[] => Array.from({ length: count }, (_, i) => i);

/** Time of row i, free of the rounding that adding would bring. */
export const timeOf = (i: number): number => Number((START_S + i * INTERVAL_S).toFixed(4));

export const sampled = (wave: (timeS: number) => number, count: number = ROWS): number[] =>
  rows(count).map((i) => wave(timeOf(i)));

/** Lines joined, with an end behind the last. */
export const lines = (content: readonly string[], end = '\n'): string =>
  content.map((line) => line + end).join('');
