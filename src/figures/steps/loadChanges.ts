import type { HalfCycleRms } from '../envelope/halfCycleRms.ts';
import type { Move } from './envelopeMoves.ts';
import { stepTimeS } from './stepTime.ts';

/** A moment at which the load changes. */
export interface LoadChange {
  readonly atS: number;
  readonly isOn: boolean;
}

/** Of the larger: a current that changes by less, or a load that does, is the same. */
const SAME_RATIO = 0.1;

/**
 * The moments at which the load changes, in time order: by the current where it was captured, else wherever the voltage
 * steps.
 *
 * @param current - on the voltage's own cycles; null: not recorded.
 * @remarks A current that follows the voltage down or up, or rises as it falls so that the power stays, shows no other load.
 */
export function loadChanges(
  voltage: HalfCycleRms,
  current: HalfCycleRms | null,
  moves: readonly Move[],
  scatter: number,
): readonly LoadChange[] {
  return moves
    .filter(({ isBreak }) => !isBreak)
    .flatMap((move) => {
      if (current === null) {
        return [{ atS: stepTimeS(voltage, move, scatter), isOn: move.after.mean < move.before.mean }];
      }
      // Voltage and current of the same cycles: of others, one on its way down looks like a change of the other.
      const first = Math.min(move.last, move.from + 2);
      const [from, to] = [
        meansBetween(current, voltage, move.before.from, move.before.last),
        meansBetween(current, voltage, first, move.last),
      ];
      const changed = (a: number, b: number): boolean => Math.abs(b - a) > SAME_RATIO * Math.max(a, b);
      const isOther = changed(from.amperes, to.amperes) && changed(from.siemens, to.siemens);
      return isOther ? [{ atS: currentTimeS(current, voltage, move), isOn: to.siemens > from.siemens }] : [];
    });
}

/** RMS current, and what the load conducts: over the same values of the voltage, first to last. */
function meansBetween(
  current: HalfCycleRms,
  voltage: HalfCycleRms,
  first: number,
  last: number,
): { readonly amperes: number; readonly siemens: number } {
  const [fromS, toS] = [voltage.timeS[first]!, voltage.timeS[last]!];
  let [amperes, count] = [0, 0];
  current.rms.forEach((value, k) => {
    if (current.timeS[k]! < fromS || current.timeS[k]! > toS) return;
    amperes += value;
    count++;
  });
  const volts = voltage.rms.subarray(first, last + 1);
  const meanVolts = volts.reduce((sum, value) => sum + value, 0) / volts.length;
  return { amperes: amperes / count, siemens: amperes / count / meanVolts };
}

/**
 * When the current's RMS, in squares, has gone half of its largest way within a cycle near the change.
 *
 * @returns seconds on the file's own axis, within a quarter of a cycle for a sharp change.
 */
export function currentTimeS({ timeS, rms }: HalfCycleRms, voltage: HalfCycleRms, move: Move): number {
  const [fromS, toS] = [
    voltage.timeS[Math.max(0, move.from - 3)]!,
    voltage.timeS[Math.min(move.last, move.from + 4)]!,
  ];
  let [at, most] = [-1, 0];
  for (let k = 1; k + 1 < rms.length; k++) {
    if (timeS[k]! < fromS || timeS[k]! > toS) continue;
    const way = Math.abs(rms[k + 1]! ** 2 - rms[k - 1]! ** 2);
    if (way > most) [at, most] = [k, way];
  }
  if (at < 0) return voltage.timeS[move.from]!;
  // One value straddles a sharp change at its place in its window: the share that it has gone tells where.
  const [before, here, after] = [-1, 0, 1].map((by) => rms[at + by]! ** 2) as [number, number, number];
  const periodS = timeS[at + 1]! - timeS[at - 1]!;
  const gone = Math.max(0, Math.min(1, (here - before) / (after - before)));
  return timeS[at]! + (0.5 - gone) * periodS;
}
