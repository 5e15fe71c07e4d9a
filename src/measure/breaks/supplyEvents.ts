import type { MeasuredFigure } from '../../base/figure.ts';
import { median } from '../../signal/statistics.ts';
import type { ChannelRecord, MeasuringChain } from '../envelope.ts';
import { missing } from '../reasons.ts';
import { type DarkSpell, type EventFigures, eventFigures } from './eventFigures.ts';
import type { Place } from './steadySide.ts';
import type { Hiccup, IdleBursts, SupplyEvent } from './supplyEvent.ts';

/** A start that is gone again before so many cycles has failed; one that stays as long has not. */
const FAILED_CYCLES = 3;

/**
 * Breaks, start-up, failed starts, cut-off, hiccup and idle bursts of one voltage channel.
 *
 * @param spells - without voltage, of `darkSpells`.
 * @param omega - the fundamental, rough, radians a sample.
 * @param isLoaded - true where a load is known to be on: an inverter that searches for one is then ruled out.
 * @returns in time order; nothing for a supply that never goes away.
 * @remarks Found are breaks from about 1 ms; one that hides in a stepped wave's dwell at zero can't be seen.
 */
export function supplyEvents(
  spells: readonly DarkSpell[],
  record: ChannelRecord,
  omega: number,
  chain: MeasuringChain,
  isLoaded: boolean,
): readonly SupplyEvent[] {
  const periodSamples = (2 * Math.PI) / omega;
  const figures = eventFigures(record, chain);
  const repeated = repeatedLosses(spells, record.samples.length, periodSamples, isLoaded, figures);
  return repeated === null ? singleEvents(spells, record.samples.length, periodSamples, figures) : [repeated];
}

function singleEvents(
  spells: readonly DarkSpell[],
  length: number,
  periodSamples: number,
  figures: EventFigures,
): readonly SupplyEvent[] {
  const least = FAILED_CYCLES * periodSamples;
  const isLong = ({ range: { from, to } }: DarkSpell): boolean =>
    from === 0 || to === length || to - from >= least;
  /** The voltage between a spell and the next came and was gone again before three cycles. */
  const isFailed = (i: number): boolean => {
    const [before, after] = [spells[i], spells[i + 1]];
    if (before === undefined || after === undefined || !isLong(before) || !isLong(after)) return false;
    return after.leaves!.position - before.joins!.position < least;
  };
  const events: SupplyEvent[] = [];
  spells.forEach(({ leaves, joins, between }, i) => {
    const wasThere = leaves !== null && !isFailed(i - 1);
    const comesBack = joins !== null && !isFailed(i);
    if (wasThere && comesBack) {
      const { away, phaseJumpDeg } = between!;
      events.push(figures.supplyBreak({ leaves, joins }, away, phaseJumpDeg, periodSamples));
    } else if (wasThere) events.push(figures.cutOff(leaves));
    else if (comesBack) events.push(figures.startUp(joins, periodSamples));
    if (isFailed(i)) events.push(figures.failedStart(joins!, spells[i + 1]!.leaves!));
  });
  return events;
}

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
function repeatedLosses(
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
      intervalS: starts.length < 2 ? missing({ code: 'bursts.one' }) : typical(successive(starts), figures),
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
