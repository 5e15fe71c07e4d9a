import type { MeasuredFigure } from '../../base/figure.ts';
import { median } from '../../signal/median.ts';
import type { Place } from './departure.ts';
import type { EventFigures } from './eventFigures.ts';
import type { Hiccup, IdleBursts } from './supplyEvent.ts';
import type { DarkSpell } from './voltageEdges.ts';

/** Periods without voltage that part one burst from the next, at least. */
const DARK_CYCLES = 2;
/** Losses or bursts that make a row of them. */
const LEAST_COUNT = 3;
/** How many times longer than the bursts after it the first stretch of voltage is where it is no burst. */
const LONGER = 1.05;

/**
 * Voltage that goes three times or more: an inverter that searches for a load gives short bursts with longer rests
 * from the start; one that can't hold its load had the voltage up before, or draws current in each.
 *
 * @param spells - without voltage, ascending.
 * @param length - of the record, in samples.
 * @returns null where the record shows neither.
 */
export function repeatedLosses(
  spells: readonly DarkSpell[],
  length: number,
  periodSamples: number,
  isLoaded: boolean,
  figures: EventFigures,
): Hiccup | IdleBursts | null {
  const rests = spells.filter(
    ({ range: { from, to } }) => from === 0 || to === length || to - from >= DARK_CYCLES * periodSamples,
  );
  // Bursts that the record's ends cut count, but their lengths don't.
  const whole = rests.slice(1).map((rest, i) => ({ from: rests[i]!.joins!, to: rest.leaves! }));
  if (whole.length === 0) return null;
  const lengths = whole.map(({ from, to }) => to.position - from.position);
  const starts = [
    ...whole.map(({ from }) => from),
    ...(rests.at(-1)!.joins === null ? [] : [rests.at(-1)!.joins!]),
  ];
  const losses = rests.flatMap(({ leaves }) => (leaves === null ? [] : [leaves]));
  const first = rests[0]!.leaves?.position ?? 0;
  const bursts = whole.length + [rests[0]!.leaves, rests.at(-1)!.joins].filter((cut) => cut !== null).length;
  const restLengths = rests.slice(1, -1).map(({ range: { from, to } }) => to - from);
  const isSearching =
    !isLoaded &&
    Math.max(...lengths) <= Math.min(...restLengths, length) &&
    first <= LONGER * Math.max(...lengths);
  if (isSearching && bursts >= LEAST_COUNT) {
    return {
      kind: 'idle bursts',
      startS: figures.time(starts[0]!.position, starts[0]!.halfWidth),
      bursts,
      burstS: typical(whole, figures),
      intervalS:
        starts.length < 2
          ? { value: null, reason: 'only one burst lies whole in the record' }
          : typical(successive(starts), figures),
    };
  }
  if (losses.length < LEAST_COUNT) return null;
  return {
    kind: 'hiccup',
    startS: figures.time(losses[0]!.position, losses[0]!.halfWidth),
    count: losses.length,
    periodS: typical(successive(losses), figures),
    onS: typical(whole, figures),
  };
}

interface Span {
  readonly from: Place;
  readonly to: Place;
}

const successive = (places: readonly Place[]): readonly Span[] =>
  places.slice(1).map((to, i) => ({ from: places[i]!, to }));

/** The median length, known as well as the ends of such a span are. */
function typical(spans: readonly Span[], figures: EventFigures): MeasuredFigure {
  const halfWidths = (of: (span: Span) => Place): number => median(spans.map((span) => of(span).halfWidth));
  return figures.duration(median(spans.map(({ from, to }) => to.position - from.position)), [
    halfWidths(({ from }) => from),
    halfWidths(({ to }) => to),
  ]);
}
