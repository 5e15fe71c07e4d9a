import type { PeriodicWave } from '../../figures/measuredWave.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { Waveform, WaveformKind } from '../measureDocument.ts';
import { rounded } from './rounded.ts';

/** A wave that rests at levels: square with two, modified sine with three, stepped with more. */
export function classifyStepped(figures: WaveFigures, periodic: PeriodicWave): Waveform {
  const levels = periodic.levels.length;
  const crossings = figures.zeroCrossingsPerCycle.value ?? 2;
  const thd = figures.thdPercent.value;
  const reasons = [`${levels} levels`];
  if (levels % 2 === 1 && figures.dwellPercent.value !== null) {
    const where = levels === 3 ? 'at zero' : 'at its middle level';
    reasons.push(`${where} for ${rounded(figures.dwellPercent.value, 2)} % of the time`);
  }
  if (thd !== null) reasons.push(`THD ${rounded(thd, 2)} %`);
  if (crossings > 6) {
    reasons.push(`switched ${crossings} times a cycle: pulse-width modulation without its filter`);
  }
  if (levels > 3 && thd !== null && thd < 8) {
    reasons.push('many small steps: the distortion is low, but it is a staircase, not a sine');
  }
  const kind: WaveformKind = levels === 2 ? 'square' : levels === 3 ? 'modified sine' : 'stepped';
  return { kind, reasons, levels, atTheEdge: false };
}
