import type { SampleRange } from '../../capture/capture.ts';
import { median } from '../../signal/median.ts';
import type { EventFigures } from './eventFigures.ts';
import type { IdleBursts } from './supplyEvent.ts';

/** Periods without voltage that part one burst from the next, at least. */
const DARK_CYCLES = 2;

/**
 * Bursts of voltage with longer rests between: three or more, no burst longer than its rests.
 *
 * @param runs - without voltage, ascending.
 * @returns null where the record shows no such thing.
 */
export function idleBursts(
  runs: readonly SampleRange[],
  length: number,
  periodSamples: number,
  figures: EventFigures,
): IdleBursts | null {
  const rests = runs.filter(({ from, to }) => to - from > DARK_CYCLES * periodSamples);
  const bursts = rests.slice(1).map((rest, i) => ({ from: rests[i]!.to, to: rest.from }));
  // Bursts that the record's ends cut count, but their lengths don't.
  const cut = [rests[0]?.from ?? 0, length - (rests.at(-1)?.to ?? length)].filter((size) => size > 1).length;
  if (bursts.length === 0 || bursts.length + cut < 3) return null;
  const shortestRest = Math.min(...rests.slice(1, -1).map(({ from, to }) => to - from), length);
  const lengths = bursts.map(({ from, to }) => to - from);
  if (Math.max(...lengths) > shortestRest) return null;
  const intervals = bursts.slice(1).map((burst, i) => burst.from - bursts[i]!.from);
  return {
    kind: 'idle bursts',
    startS: figures.time(bursts[0]!.from, 1),
    bursts: bursts.length + cut,
    burstS: figures.duration(median(lengths), [1, 1]),
    intervalS:
      intervals.length === 0
        ? { value: null, reason: 'only one burst lies whole in the record' }
        : figures.duration(median(intervals), [1, 1]),
  };
}
