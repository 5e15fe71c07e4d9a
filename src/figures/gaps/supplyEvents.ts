import type { SampleRange } from '../../capture/capture.ts';
import type { ChannelRecord } from '../envelope/halfCycleRms.ts';
import type { MeasuringChain } from '../envelope/measuringChain.ts';
import { darkSpells } from './darkSpells.ts';
import { type EventFigures, eventFigures } from './eventFigures.ts';
import { repeatedLosses } from './repeatedLosses.ts';
import type { SupplyEvent } from './supplyEvent.ts';
import type { DarkSpell } from './voltageEdges.ts';

/** Where the supply was away, and what is told of it. */
export interface SupplyEvents {
  /** In time order. */
  readonly events: readonly SupplyEvent[];
  /** Stretches without voltage, in samples, ascending. */
  readonly dark: readonly SampleRange[];
}

/** A start that is gone again before so many cycles has failed; one that stays as long has not. */
const FAILED_CYCLES = 3;

/**
 * Breaks, start-up, failed starts, cut-off, hiccup and idle bursts of one voltage channel.
 *
 * @param omega - the fundamental, rough, radians a sample.
 * @param isLoaded - true where a load is known to be on: an inverter that searches for one is then ruled out.
 * @returns nothing for a supply that never goes away.
 * @remarks Found are breaks from about 1 ms; one that hides in a stepped wave's dwell at zero can't be seen.
 */
export function supplyEvents(
  record: ChannelRecord,
  omega: number,
  chain: MeasuringChain,
  isLoaded = false,
): SupplyEvents {
  const periodSamples = (2 * Math.PI) / omega;
  const figures = eventFigures(record, chain);
  const spells = darkSpells(record, omega, figures);
  const dark = spells.map(({ range }) => range);
  const repeated = repeatedLosses(spells, record.samples.length, periodSamples, isLoaded, figures);
  if (repeated !== null) return { events: [repeated], dark };
  return { events: singleEvents(spells, record.samples.length, periodSamples, figures), dark };
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
  spells.forEach(({ leaves, joins, event }, i) => {
    const wasThere = leaves !== null && !isFailed(i - 1);
    const comesBack = joins !== null && !isFailed(i);
    if (wasThere && comesBack) events.push(event!);
    else if (wasThere) events.push(figures.cutOff(leaves));
    else if (comesBack) events.push(figures.startUp(joins, periodSamples));
    if (isFailed(i)) events.push(figures.failedStart(joins!, spells[i + 1]!.leaves!));
  });
  return events;
}
