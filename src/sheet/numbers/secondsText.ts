import type { Figure } from '../../base/figure.ts';
import { figureText } from './figureText.ts';
import { significantText } from './significantText.ts';
import { withUnit } from './withUnit.ts';

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
