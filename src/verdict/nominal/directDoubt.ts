import type { Figure } from '../../base/figure.ts';
import type { Notice } from '../../base/notice.ts';
import { inVolts } from './inVolts.ts';

/** Of the RMS without DC. An offset of some per cent is a scope's own; common practice, no source. */
const NOTABLE_SHARE = 0.1;

/**
 * Doubt about a voltage that rides on much DC: converter codes counted from zero, a trace that was moved with its zero, or
 * a wave that lacks half of each cycle. What is held against its limits is the RMS with DC.
 *
 * @param mean - of the voltage, V.
 * @param acRms - RMS without DC, V.
 * @returns `dc.large`; nothing where either isn't known, or the mean's own doubt might explain it.
 */
export function directDoubt(mean: Figure, acRms: Figure): readonly Notice[] {
  if (mean.value === null || !acRms.value) return [];
  const size = Math.abs(mean.value);
  if (size - mean.uncertainty <= NOTABLE_SHARE * acRms.value) return [];
  return [
    {
      code: 'dc.large',
      message: `The wave rides on ${inVolts(mean.value)} of DC, where an outlet has next to none. If the file counts codes from zero or the trace was moved, the voltage is the RMS without DC: ${inVolts(acRms.value)}.`,
    },
  ];
}
