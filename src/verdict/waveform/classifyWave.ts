import type { MeasuredWave } from '../../figures/measuredWave.ts';
import type { Waveform } from '../measureDocument.ts';
import { classifySmooth } from './classifySmooth.ts';
import { classifyStepped } from './classifyStepped.ts';
import { isAlternating } from './isAlternating.ts';
import { rounded } from './rounded.ts';

/** THD up to which a smooth wave is called a pure sine, unless told otherwise. Common practice, no source. */
export const SINE_THD_PERCENT = 5;

/**
 * The kind of wave, with the reasons a person can follow.
 *
 * Plateaus decide before distortion does: at 50 % duty a modified sine has a sine's crest factor and a
 * square wave's THD, and a staircase of 17 levels has the THD of a good sine.
 *
 * @param sineThdPercent - THD up to which a smooth wave is a pure sine.
 */
export function classifyWave(wave: MeasuredWave, sineThdPercent: number = SINE_THD_PERCENT): Waveform {
  if (wave.periodic === null) {
    const reason = {
      noise: 'only noise: nothing repeats',
      constant: 'a direct voltage: nothing alternates, so there is no wave to classify',
      brief: 'voltage for under 1.3 cycles, too short to tell its wave',
      direct: 'a direct voltage: what moves on it does not repeat, so there is no wave to classify',
    }[wave.aperiodic ?? 'constant'];
    return { kind: 'not classified', reasons: [reason], levels: 0, atTheEdge: false };
  }
  if (!isAlternating(wave)) {
    const { mean, acRms, frequencyHz } = wave.figures;
    const ripple = `RMS of the ripple ${rounded(acRms.value ?? 0, 2)} at ${rounded(frequencyHz.value ?? 0, 3)} Hz`;
    const reason = `a direct voltage with ripple: mean ${rounded(mean.value ?? 0, 3)}, ${ripple}`;
    return { kind: 'not classified', reasons: [reason], levels: 0, atTheEdge: false };
  }
  return wave.periodic.levels.length > 0
    ? classifyStepped(wave.figures, wave.periodic)
    : classifySmooth(wave.figures, wave.periodic, sineThdPercent);
}
