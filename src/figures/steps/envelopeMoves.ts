import type { SampleRange } from '../../capture/capture.ts';
import type { HalfCycleRms } from '../envelope/halfCycleRms.ts';
import { type Change, changes } from './changes.ts';
import { type SettledStretch, settledStretch } from './settledStretch.ts';

/** A change of the envelope between two stretches that it settles in. Indices of the envelope's values. */
export interface Move {
  /** First value that moves. */
  readonly from: number;
  /** Last value before the next move, or of the record. */
  readonly last: number;
  readonly before: SettledStretch;
  readonly after: SettledStretch;
  /** True where the voltage is away within it: a break, a start or an end, no step of the load. */
  readonly isBreak: boolean;
}

export interface EnvelopeMoves {
  readonly moves: readonly Move[];
  /** Standard deviation of one value of the voltage. */
  readonly scatter: number;
}

/** Of nominal: a step is a change over it within two cycles. */
export const STEP_RATIO = 0.01;
/** Of nominal: an envelope within it is settled. */
const SETTLED_RATIO = 0.002;
/** Of the largest current: a change over it shows a step that a stiff voltage doesn't. */
const CURRENT_STEP_RATIO = 0.1;

/**
 * Every fast change of a supply, found in the voltage or in the current.
 *
 * @param current - on the voltage's own cycles; null: not recorded.
 * @param reference - nominal voltage, or the usual RMS where none is known, in the unit of the RMS.
 * @param dark - stretches without voltage, in samples.
 */
export function envelopeMoves(
  voltage: HalfCycleRms,
  current: HalfCycleRms | null,
  reference: number,
  dark: readonly SampleRange[],
): EnvelopeMoves {
  const { changes: found, scatter } = changes(voltage.rms, { least: STEP_RATIO * reference });
  const all = current === null ? found : withCurrent(found, voltage, current);
  const band = Math.max(SETTLED_RATIO * reference, 4 * scatter);
  const moves: Move[] = [];
  all.forEach((change, i) => {
    const last = all[i + 1]?.before ?? voltage.rms.length - 1;
    const first = moves.at(-1)?.after.from ?? 0;
    const before = settledStretch(voltage.rms, Math.min(first, change.before), change.before, band);
    const after = settledStretch(voltage.rms, change.before + 1, last, band);
    const [from, to] = [voltage.from[change.before]!, voltage.to[change.last]!];
    const isBreak = dark.some((away) => away.from < to && away.to > from);
    moves.push({ from: change.before + 1, last, before, after, isBreak });
  });
  return { moves, scatter };
}

/** The voltage's changes and those of the current that it doesn't show, in time order. */
function withCurrent(
  found: readonly Change[],
  voltage: HalfCycleRms,
  current: HalfCycleRms,
): readonly Change[] {
  const largest = current.rms.reduce((a, b) => Math.max(a, b), 0);
  const indexAt = (timeS: number): number => {
    const index = voltage.timeS.findIndex((time) => time >= timeS);
    return index < 0 ? voltage.timeS.length - 1 : index;
  };
  const more = changes(current.rms, { least: CURRENT_STEP_RATIO * largest })
    .changes.map(({ before, last }) => ({
      before: indexAt(current.timeS[before]!),
      last: indexAt(current.timeS[last]!),
    }))
    .filter((change) => !found.some(({ before, last }) => change.before <= last && before <= change.last));
  return [...found, ...more].sort((a, b) => a.before - b.before);
}
