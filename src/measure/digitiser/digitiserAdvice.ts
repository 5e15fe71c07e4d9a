import { decimalExponent } from '../../base/elementary.ts';
import type { DigitiserNotice } from '../notices.ts';
import type { DigitiserFigures } from './digitiserFigures.ts';

/**
 * What a person can set on the scope to use more of its digitiser.
 *
 * @param stepSize - as the scope itself counts, probe factor and all.
 * @param unit - of the channel, as advice names it.
 */
export function digitiserAdvice(
  figures: DigitiserFigures,
  stepSize: number,
  unit: 'V' | 'A',
): DigitiserNotice[] {
  return [
    clippedNotice(figures, stepSize, unit),
    rangeNotice(figures, stepSize, unit),
    missingNotice(figures),
    noiseNotice(figures),
  ].filter((notice) => notice !== null);
}

function clippedNotice(figures: DigitiserFigures, stepSize: number, unit: 'V' | 'A'): DigitiserNotice | null {
  const { clipped, levelsUsed, levelsAvailable } = figures;
  if (clipped === null) return null;
  const reachesEnd = levelsUsed !== null && levelsAvailable !== null && levelsUsed >= levelsAvailable;
  const perDivision = reachesEnd
    ? scaleAtLeast((1.2 * levelsAvailable * stepSize) / ASSUMED_DIVISIONS)
    : null;
  return { code: 'digitiser.clipped', ends: clipped, perDivision, unit };
}

function rangeNotice(figures: DigitiserFigures, stepSize: number, unit: 'V' | 'A'): DigitiserNotice | null {
  const { clipped, bitsAssumed, levelsUsed, levelsAvailable } = figures;
  if (clipped !== null || levelsUsed === null || levelsAvailable === null) return null;
  if (levelsUsed >= 0.5 * levelsAvailable) return null;
  const span = Math.max(1, levelsUsed - 1) * stepSize;
  const perDivision = finestScale(span);
  // Not worth a turn of the knob.
  if (perDivision > (0.75 * levelsAvailable * stepSize) / ASSUMED_DIVISIONS) return null;
  return {
    code: 'digitiser.range',
    ...{ levelsUsed, levelsAvailable, perDivision, unit, bitsAssumed },
    fillPercent: (100 * span) / (ASSUMED_DIVISIONS * perDivision),
    divisions: ASSUMED_DIVISIONS,
  };
}

function missingNotice({ missingCodes, levelsUsed }: DigitiserFigures): DigitiserNotice | null {
  if (missingCodes === null || missingCodes === 0 || levelsUsed === null) return null;
  const isOfFile = missingCodes > 0.3 * levelsUsed;
  return { code: 'digitiser.missingCodes', missing: missingCodes, levels: levelsUsed, isOfFile };
}

function noiseNotice({ bits, noiseBits }: DigitiserFigures): DigitiserNotice | null {
  if (bits === null || noiseBits === null || bits - noiseBits < 2) return null;
  return { code: 'digitiser.noise', noiseBits, bits };
}

/** Divisions of a screen's height, and that the converter's range is the screen. Common practice, no source. */
const ASSUMED_DIVISIONS = 8;
/** Of the screen that a wave may fill. */
const HIGHEST_FILL = 0.9;

/**
 * The finest setting of the row 1, 2, 5, 10 … a division at which a wave fills no more than 90 % of the screen.
 *
 * @param span - peak to peak, > 0.
 * @returns in the unit of the span a division.
 * @remarks The row's steps are up to 2.5 wide, so that the wave may fill as little as 36 %.
 * @example finestScale(650) // 100: 81 % of 8 divisions
 */
export function finestScale(span: number): number {
  return scaleAtLeast(span / (HIGHEST_FILL * ASSUMED_DIVISIONS));
}

/** The smallest setting of the row that is not below `value`. */
export function scaleAtLeast(value: number): number {
  const exponent = decimalExponent(value);
  for (const mantissa of [1, 2, 5, 10]) {
    const scale = Number(`${mantissa}e${exponent}`);
    // A value that stands on the row but for rounding is that setting.
    if (scale >= value * (1 - 1e-9)) return scale;
  }
  return Number(`1e${exponent + 1}`);
}
