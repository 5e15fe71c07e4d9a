import { decimalExponent } from '../../base/elementary.ts';
import type { Notice } from '../../base/notice.ts';
import type { DigitiserFigures } from './digitiserFigures.ts';

/**
 * What a person can set on the scope to use more of its digitiser.
 *
 * @param stepSize - as the scope itself counts, probe factor and all.
 * @param unit - of the channel, as advice names it.
 */
export function digitiserAdvice(figures: DigitiserFigures, stepSize: number, unit: 'V' | 'A'): Notice[] {
  return [
    clippedNotice(figures, stepSize, unit),
    rangeNotice(figures, stepSize, unit),
    missingNotice(figures),
    noiseNotice(figures),
  ].filter((notice) => notice !== null);
}

function clippedNotice(figures: DigitiserFigures, stepSize: number, unit: string): Notice | null {
  const { clipped, levelsUsed, levelsAvailable } = figures;
  if (clipped === null) return null;
  const where = { top: 'highest code', bottom: 'lowest code', both: 'highest and the lowest code' }[clipped];
  if (levelsUsed === null || levelsAvailable === null || levelsUsed < levelsAvailable) {
    return {
      code: 'digitiser.clipped',
      message: `Samples pile up on the ${where} that the record holds: if the trace touches the edge of the screen, set more ${unit === 'V' ? 'volts' : 'amperes'} per division and save again.`,
    };
  }
  const coarser = scaleAtLeast((1.2 * levelsAvailable * stepSize) / ASSUMED_DIVISIONS);
  return {
    code: 'digitiser.clipped',
    message: `Samples pile up on the ${where} of the scope, which cuts the wave off: set ${coarser} ${unit} per division and save again.`,
  };
}

function rangeNotice(figures: DigitiserFigures, stepSize: number, unit: string): Notice | null {
  const { clipped, bitsAssumed, levelsUsed, levelsAvailable } = figures;
  if (clipped !== null || levelsUsed === null || levelsAvailable === null) return null;
  if (levelsUsed >= 0.5 * levelsAvailable) return null;
  const span = Math.max(1, levelsUsed - 1) * stepSize;
  const scale = finestScale(span);
  // Not worth a turn of the knob.
  if (scale > (0.75 * levelsAvailable * stepSize) / ASSUMED_DIVISIONS) return null;
  const fill = Math.round((100 * span) / (ASSUMED_DIVISIONS * scale));
  const assumed = bitsAssumed ? '8 bits and ' : '';
  return {
    code: 'digitiser.range',
    message: `The wave uses ${levelsUsed} of the scope's ${levelsAvailable} levels: set ${scale} ${unit} per division, where it fills ${fill} % of the screen (${assumed}${ASSUMED_DIVISIONS} divisions assumed).`,
  };
}

function missingNotice({ missingCodes, levelsUsed }: DigitiserFigures): Notice | null {
  if (missingCodes === null || missingCodes === 0 || levelsUsed === null) return null;
  const [levels, them, occur] =
    missingCodes === 1 ? ['One level', 'it', 'occurs'] : [`${missingCodes} levels`, 'them', 'occur'];
  return {
    code: 'digitiser.missingCodes',
    message:
      missingCodes > 0.3 * levelsUsed
        ? `${missingCodes} of the ${levelsUsed} levels that the wave passes never occur: the scope's step is coarser than the file makes it look.`
        : `${levels} of the scope's converter never ${occur} though the wave passes ${them}: differences of a step or two are not to be trusted.`,
  };
}

function noiseNotice({ bits, noiseBits }: DigitiserFigures): Notice | null {
  if (bits === null || noiseBits === null || bits - noiseBits < 2) return null;
  return {
    code: 'digitiser.noise',
    message: `Noise leaves ${noiseBits.toFixed(1)} of the scope's ${bits} bits on this wave: check the probe's range and leads, or average neighbouring samples (high resolution) where ripple doesn't matter.`,
  };
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
