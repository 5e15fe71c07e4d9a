import type { MeasuredFigure } from '../../base/figure.ts';
import { decimalText } from './decimalText.ts';
import { significantText } from './significantText.ts';
import { uncertaintyDecimals } from './uncertaintyDecimals.ts';

/** A figure's two numbers as text, at one decimal place. */
export interface FigureParts {
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
