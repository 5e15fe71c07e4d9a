import type { PeriodicWave } from '../../figures/measuredWave.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { Waveform, WaveformKind } from '../measureDocument.ts';
import { rounded } from './rounded.ts';

/** A wave that rests at levels: square with two, modified sine with three, stepped with more. */
export function classifyStepped(figures: WaveFigures, periodic: PeriodicWave): Waveform {
  const levels = periodic.levels.length;
  const thd = figures.thdPercent.value;
  const other = unlikeAnOutlet(periodic);
  if (other !== null) return { kind: 'not classified', reasons: [other], levels, atTheEdge: false };
  const reasons = [`${levels} levels`];
  if (levels % 2 === 1 && figures.dwellPercent.value !== null) {
    const where = levels === 3 ? 'at zero' : 'at its middle level';
    reasons.push(`${where} for ${rounded(figures.dwellPercent.value, 2)} % of the time`);
  }
  if (thd !== null) reasons.push(`THD ${rounded(thd, 2)} %`);
  if (levels > 3 && thd !== null && thd < 8) {
    reasons.push('many small steps: the distortion is low, but it is a staircase, not a sine');
  }
  const kind: WaveformKind = levels === 2 ? 'square' : levels === 3 ? 'modified sine' : 'stepped';
  return { kind, reasons, levels, atTheEdge: false };
}

/** Edges a cycle of a square wave are two, of a modified sine four; ringing through its zero adds a few. */
const MOST_SWITCHES = 10;
/** No ringing of a square wave goes through the middle of two levels; an edge more is one cut by the record's end. */
const MOST_OF_A_SQUARE = 3;
/** Of the time: a level that is left for less is interrupted by impulses. */
const LEAST_SHARE = 0.1;

/** Why two or three levels make neither a square wave nor a modified sine; null where they do. */
function unlikeAnOutlet({ levels, switchesPerCycle }: PeriodicWave): string | null {
  if (levels.length > 3) return null;
  if (switchesPerCycle > MOST_SWITCHES) {
    return `switches ${rounded(switchesPerCycle, 2)} times a cycle between ${levels.length} levels: pulse-width modulation without its filter`;
  }
  if (levels.length === 2 && switchesPerCycle > MOST_OF_A_SQUARE) {
    return `switches ${Math.round(switchesPerCycle)} times a cycle between 2 levels: pulses in bursts, as a signal has them, and no outlet’s wave`;
  }
  const most = levels.reduce((a, b) => (b.share > a.share ? b : a));
  if (most.share <= 1 - LEAST_SHARE) return null;
  return `rests at one level for ${rounded(100 * most.share, 2)} % of the time, between impulses`;
}
