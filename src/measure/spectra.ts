import type { Capture, Channel } from '../read/capture.ts';
import { type HighBands, highBands } from './bands/highBands.ts';
import { digitiserCheck } from './digitiser/digitiserCheck.ts';
import type { DigitiserFigures } from './digitiser/digitiserFigures.ts';
import type { GroupFigures } from './groups/groupFigures.ts';
import { harmonicGroups } from './groups/harmonicGroups.ts';
import type { MeasuredWave } from './measuredWave.ts';
import type { MeasureNotice } from './notices.ts';
import type { MeasureReason } from './reasons.ts';

/** What is read off a periodic record besides its figures. */
export interface Spectra {
  /** Null where the record holds no window of 10 or 12 cycles. */
  readonly groups: GroupFigures | null;
  /** Null where the sample rate does not reach 2 kHz, or nothing repeats. */
  readonly high: HighBands | null;
  readonly digitiser: DigitiserFigures | { readonly reason: MeasureReason };
  readonly notices: readonly MeasureNotice[];
}

/**
 * Harmonic groups, what lies above 2 kHz, and the digitiser's quality, of a measured channel.
 *
 * @param nominalFrequencyHz - as told, which tells 50 from 60 Hz for the windows' length; null: the wave's own does.
 */
export function spectra(
  capture: Capture,
  channel: Channel,
  wave: MeasuredWave,
  nominalFrequencyHz: number | null,
): Spectra {
  if (wave.periodic === null) {
    const reason: MeasureReason = { code: 'digitiser.noCurve' };
    return { groups: null, high: null, digitiser: { reason }, notices: [] };
  }
  const { intervalS, samples, stepSize } = wave;
  const { fit, levels, residualPower } = wave.periodic;
  const smooth = levels.length === 0;
  const groups = harmonicGroups({ intervalS, fit, nominalFrequencyHz });
  const high = withoutCodeTones(
    highBands({
      ...{ intervalS, fit, residualPower, nominalFrequencyHz, smooth },
      acquisition: capture.acquisition ?? null,
    }),
    stepSize,
  );
  const digitiser = digitiserCheck({
    samples,
    stepSize,
    bits: channel.bits ?? null,
    fit,
    smooth,
    unit: channel.quantity === 'current' ? 'A' : 'V',
    scale: channel.scale,
  });
  const notices = [groups, high, digitiser].flatMap((part) =>
    part !== null && 'notices' in part ? part.notices : [],
  );
  return { groups, high, digitiser, notices };
}

/** Codes walked through without noise beat with the sample rate: a line below q/√12 may be no more than that. */
function withoutCodeTones(high: HighBands | null, stepSize: number | null): HighBands | null {
  if (high?.ripple == null || high.ripple.rms > (stepSize ?? 0) / Math.sqrt(12)) return high;
  return { ...high, ripple: null, notices: high.notices.filter(({ code }) => code !== 'ripple.alias') };
}
