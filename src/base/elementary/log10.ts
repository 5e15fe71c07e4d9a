import { log } from './log.ts';

/** The decimal logarithm; of a power of ten not exact: its exponent is `decimalExponent`. */
export function log10(x: number): number {
  return log(x) * Math.LOG10E;
}
