import type { Figure } from '../../../src/base/figure.ts';

/** The value of a figure that must have been measured. */
export function numberOf(figure: Figure): number {
  if (figure.value === null) throw new Error(JSON.stringify(figure.reason));
  return figure.value;
}

export function uncertaintyOf(figure: Figure): number {
  if (figure.value === null) throw new Error(JSON.stringify(figure.reason));
  return figure.uncertainty;
}
