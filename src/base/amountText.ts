import { decimalExponent, powerOfTen } from './elementary.ts';

/** A number inside a sentence, to so many significant digits, as short as it can be. */
export function rounded(value: number, digits: number): string {
  return String(Number(value.toPrecision(digits)));
}

const PREFIXES: Readonly<Record<number, string>> = {
  [-15]: 'f',
  [-12]: 'p',
  [-9]: 'n',
  [-6]: 'µ',
  [-3]: 'm',
  0: '',
  3: 'k',
  6: 'M',
  9: 'G',
};

/**
 * An amount with the prefix that people write: "100 MS/s", "20 µs", "1.05 MHz".
 *
 * @param unit - one that takes prefixes.
 * @param digits - significant ones; zeros behind the mark are dropped.
 */
export function amountText(value: number, unit: string, digits = 3): string {
  const shown = Number(value.toPrecision(digits));
  if (shown === 0 || !Number.isFinite(shown)) return `${shown} ${unit}`;
  const exponent = Math.min(9, Math.max(-15, 3 * Math.floor(decimalExponent(shown) / 3)));
  return `${Number((value / powerOfTen(exponent)).toPrecision(digits))} ${PREFIXES[exponent]}${unit}`;
}
