import { decimalExponent, powerOfTen } from '../base/elementary.ts';
import type { Figure, MeasuredFigure } from '../base/figure.ts';
import type { Limit } from '../judge/decide.ts';
import type { Finding } from '../judge/limits/findings.ts';
import { decimalText, noBreakSpace, significantText, uncertaintyDecimals, withUnit } from './numbers.ts';

/**
 * A figure in one breath: "119.8 ± 0.9 V", "not above 0.43 %" where it lies below what the instrument can
 * resolve, or "not measurable".
 *
 * @param unit - as printed after the number; empty for a ratio.
 */
export function figureText(figure: Figure, unit: string): string {
  if (figure.value === null) return 'not measurable';
  if (figure.notAbove !== undefined) return `not above ${withUnit(boundText(figure.notAbove), unit)}`;
  const { value, uncertainty } = figureParts(figure);
  const number = uncertainty === null ? value : `${value}${noBreakSpace}±${noBreakSpace}${uncertainty}`;
  return withUnit(number, unit);
}

/** A figure's two numbers as text, at one decimal place. */
interface FigureParts {
  readonly value: string;
  /** Without sign; null where the uncertainty is zero, which is printed as none. */
  readonly uncertainty: string | null;
}

/**
 * A figure as two numbers in text: the value stops at the decimal place of its rounded uncertainty.
 *
 * @example figureParts({ value: 119.8234, uncertainty: 0.0931 }) // { value: "119.82", uncertainty: "0.09" }
 */
export function figureParts(figure: MeasuredFigure): FigureParts {
  const { value, uncertainty } = figure;
  if (uncertainty === 0) return { value: significantText(value, 6), uncertainty: null };
  const decimals = uncertaintyDecimals(uncertainty);
  return { value: decimalText(value, decimals), uncertainty: decimalText(uncertainty, decimals) };
}

/**
 * An upper bound in text: two significant digits, rounded up, since a bound rounded down is none.
 *
 * @param bound - positive.
 * @example boundText(0.4213) // "0.43"
 */
export function boundText(bound: number): string {
  const decimals = 1 - decimalExponent(bound);
  const step = powerOfTen(-decimals);
  // A bound that is a whole number of steps already must not be lifted by its last bit.
  return decimalText(Math.ceil(bound / step - 1e-9) * step, Math.max(0, decimals));
}

/** From here up a time reads in seconds: "14.2 ms", "0.39 s". */
const LEAST_SECONDS = 0.1;

/** Seconds without an uncertainty, in the unit that suits: "12.4 ms", "0.39 s". */
export function secondsText(seconds: number, digits = 3): string {
  return Math.abs(seconds) < LEAST_SECONDS
    ? withUnit(significantText(seconds * 1e3, digits), 'ms')
    : withUnit(significantText(seconds, digits), 's');
}

/** A figure in seconds the same way: "12.4 ± 0.5 ms", "0.390 ± 0.004 s". */
export function secondsFigureText(figure: Figure): string {
  return isShort(figure) ? figureText(inMilliseconds(figure), 'ms') : figureText(figure, 's');
}

/** Whether a time is read in milliseconds. */
export function isShort({ value }: Figure): boolean {
  return value !== null && Math.abs(value) < LEAST_SECONDS;
}

/** A figure in seconds as one in milliseconds. */
export function inMilliseconds(figure: Figure): Figure {
  return figure.value === null
    ? figure
    : {
        ...figure,
        value: 1e3 * figure.value,
        uncertainty: 1e3 * figure.uncertainty,
        ...(figure.notAbove === undefined ? {} : { notAbove: 1e3 * figure.notAbove }),
      };
}

/** A quantity in words, taken apart. */
interface QuantityParts {
  /** `RMS voltage`. */
  readonly name: string;
  /** What stands in the closing brackets; empty where none. A percentage's is `%` alone. */
  readonly unit: string;
  /** What a percentage is of, unless it is the fundamental, as is usual: `of nominal`; else empty. */
  readonly base: string;
}

/**
 * Takes the unit off the end of a quantity in words.
 *
 * @param quantity - `RMS voltage (V)`, `harmonic 5 (% of fundamental)`, `crest factor`.
 */
export function quantityParts(quantity: string): QuantityParts {
  const match = /^(.*\S)\s*\(([^()]*)\)$/.exec(quantity);
  if (match === null) return { name: quantity, unit: '', base: '' };
  const unit = match[2] ?? '';
  const name = match[1] ?? quantity;
  if (!unit.startsWith('%')) return { name, unit, base: '' };
  const base = unit.slice(1).trim();
  return { name, unit: '%', base: base === 'of fundamental' ? '' : base };
}

/**
 * A limit in words: "at most 8 %", "at least 4 V", "207 to 253 V".
 *
 * @returns "no limit" where neither side is set.
 */
export function limitText(limit: Limit, unit: string): string {
  const { min, max } = limit;
  if (min !== undefined && max !== undefined) {
    return withUnit(`${limitNumber(min)} to ${limitNumber(max)}`, unit);
  }
  if (max !== undefined) return `at most ${withUnit(limitNumber(max), unit)}`;
  if (min !== undefined) return `at least ${withUnit(limitNumber(min), unit)}`;
  return 'no limit';
}

/** A limit's number: limits are round, or computed from a formula that nobody reads past four digits. */
function limitNumber(value: number): string {
  return significantText(value, Math.abs(value) < 10 ? 3 : 4);
}

/**
 * The distance to the nearest limit in words: "outside by 0.12 points", "inside by 6.5 V".
 *
 * @param unit - the finding's unit as printed; percent become points, which nobody takes for a share of the limit.
 */
export function marginText(finding: Pick<Finding, 'margin' | 'side'>, unit: string): string {
  const distance = Math.abs(finding.margin);
  if (distance === 0) return 'on the limit';
  const decimals = Math.min(Math.max(uncertaintyDecimals(distance), distance < 1 ? 2 : 1), 4);
  const points = unit === '%' ? 'points' : unit;
  return `${finding.side} by ${withUnit(decimalText(distance, decimals), points)}`;
}

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
