import type { Notice } from '../../base/notice.ts';
import type { DigitiserFigures } from './digitiserFigures.ts';
import { ASSUMED_DIVISIONS, finestScale, scaleAtLeast } from './verticalScale.ts';

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

function clippedNotice({ clipped, levels }: DigitiserFigures, stepSize: number, unit: string): Notice | null {
  if (clipped === null || levels === null) return null;
  const where = { top: 'highest code', bottom: 'lowest code', both: 'highest and the lowest code' }[clipped];
  const range = levels.available * stepSize;
  const coarser = scaleAtLeast((1.2 * range) / ASSUMED_DIVISIONS);
  const certain = levels.used >= levels.available;
  return {
    code: 'digitiser.clipped',
    message: certain
      ? `Samples pile up on the ${where} of the scope, which cuts the wave off: set ${coarser} ${unit} per division and save again.`
      : `Samples pile up on the ${where} that the record holds: if the trace touches the edge of the screen, set more ${unit === 'V' ? 'volts' : 'amperes'} per division and save again.`,
  };
}

function rangeNotice({ clipped, levels }: DigitiserFigures, stepSize: number, unit: string): Notice | null {
  if (clipped !== null || levels === null || levels.used >= 0.5 * levels.available) return null;
  const span = Math.max(1, levels.used - 1) * stepSize;
  const scale = finestScale(span);
  if (scale > (0.75 * levels.available * stepSize) / ASSUMED_DIVISIONS) return null;
  const fill = Math.round((100 * span) / (ASSUMED_DIVISIONS * scale));
  return {
    code: 'digitiser.range',
    message: `The wave uses ${levels.used} of the scope's ${levels.available} levels: set ${scale} ${unit} per division, where it fills ${fill} % of a screen of ${ASSUMED_DIVISIONS} divisions (assumed).`,
  };
}

function missingNotice({ missingCodes, levels }: DigitiserFigures): Notice | null {
  if (missingCodes === null || missingCodes === 0 || levels === null) return null;
  const many = missingCodes > 0.3 * levels.used;
  return {
    code: 'digitiser.missingCodes',
    message: many
      ? `${missingCodes} of the ${levels.used} levels that the wave passes never occur: the scope's step is coarser than the file makes it look.`
      : `${missingCodes === 1 ? 'One level' : `${missingCodes} levels`} of the scope's converter never ${missingCodes === 1 ? 'occurs' : 'occur'} though the wave passes ${missingCodes === 1 ? 'it' : 'them'}: figures below a step of the scope are not to be trusted.`,
  };
}

function noiseNotice({ bits, noiseBits }: DigitiserFigures): Notice | null {
  if (bits === null || noiseBits === null || bits - noiseBits < 2) return null;
  return {
    code: 'digitiser.noise',
    message: `Noise leaves ${noiseBits.toFixed(1)} of the scope's ${bits} bits on this wave: check the probe's range and leads, or average neighbouring samples (high resolution) where ripple doesn't matter.`,
  };
}
