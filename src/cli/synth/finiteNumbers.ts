import { finiteNumber } from './finiteNumber.ts';

/** The numbers of a list like `12,48`. */
export function finiteNumbers(text: string): readonly number[] {
  return text.split(',').map(finiteNumber);
}
