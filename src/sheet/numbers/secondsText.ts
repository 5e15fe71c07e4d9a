import type { Figure } from '../../base/figure.ts';
import { figureText } from './figureText.ts';
import { significantText } from './significantText.ts';
import { withUnit } from './withUnit.ts';

/** Seconds without an uncertainty, in milliseconds below one second: "12.4 ms". */
export function secondsText(seconds: number, digits = 3): string {
  return Math.abs(seconds) < 1
    ? withUnit(significantText(seconds * 1e3, digits), 'ms')
    : withUnit(significantText(seconds, digits), 's');
}

/** A figure in seconds the same way: "12.4 ± 0.5 ms". */
export function secondsFigureText(figure: Figure): string {
  return figure.value === null || Math.abs(figure.value) >= 1
    ? figureText(figure, 's')
    : figureText(inMilliseconds(figure), 'ms');
}

/** A figure in seconds as one in milliseconds. */
export function inMilliseconds(figure: Figure): Figure {
  return figure.value === null
    ? figure
    : { value: 1e3 * figure.value, uncertainty: 1e3 * figure.uncertainty };
}
