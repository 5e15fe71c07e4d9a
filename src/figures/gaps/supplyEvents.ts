import type { SampleRange } from '../../capture/capture.ts';
import { presentLooks } from '../../signal/presentLooks.ts';
import type { ChannelRecord } from '../envelope/halfCycleRms.ts';
import type { MeasuringChain } from '../envelope/measuringChain.ts';
import { breakBetween } from './breakBetween.ts';
import { darkRuns } from './darkRuns.ts';
import { eventFigures } from './eventFigures.ts';
import { idleBursts } from './idleBursts.ts';
import type { SupplyEvent } from './supplyEvent.ts';

/** Where the supply was away, and what is told of it. */
export interface SupplyEvents {
  /** In time order. */
  readonly events: readonly SupplyEvent[];
  /** Stretches without voltage, in samples, ascending. */
  readonly dark: readonly SampleRange[];
}

/**
 * Breaks, start-up, cut-off and idle bursts of one voltage channel.
 *
 * @param omega - the fundamental, rough, radians a sample.
 * @returns nothing for a supply that never goes away.
 * @remarks Found are breaks from about 3 ms; one that hides in a stepped wave's dwell at zero can't be seen.
 */
export function supplyEvents(record: ChannelRecord, omega: number, chain: MeasuringChain): SupplyEvents {
  const { samples } = record;
  const periodSamples = (2 * Math.PI) / omega;
  const runs = darkRuns(samples, periodSamples, usualPeak(samples));
  const figures = eventFigures(record, chain);
  const sure = runs.filter((run) => run.sure);
  const bursts = idleBursts(sure, samples.length, periodSamples, figures);
  if (bursts !== null) return { events: [bursts], dark: sure };
  const events: SupplyEvent[] = [];
  const dark: SampleRange[] = [];
  for (const run of runs) {
    const before = { from: dark.at(-1)?.to ?? 0, to: run.from };
    const after = { from: run.to, to: sure.find(({ from }) => from > run.from)?.from ?? samples.length };
    // Less than a quarter cycle of voltage is no side but a run cut by the record's end.
    const isSide = ({ from, to }: SampleRange): boolean => to - from >= periodSamples / 4;
    const atStart = run.sure && !isSide({ from: 0, to: run.from });
    const atEnd = run.sure && !isSide({ from: run.to, to: samples.length });
    if (isSide(before) && isSide(after)) {
      const between = breakBetween(record, { before, run, after }, omega, figures);
      if (between === null) continue;
      dark.push(between.range);
      events.push(between.event);
    } else if (atStart !== atEnd) {
      dark.push(run);
      events.push(atStart ? figures.startUp(run.to, periodSamples) : figures.cutOff(run.from));
    }
  }
  return { events, dark };
}

/** Values that the usual peak is told from, about. */
const LOOKS = 20_000;

/** The size that all but a hundredth of |v| stays under: of the peak, also where most of the record is dark. */
function usualPeak(samples: Float64Array): number {
  const sizes = presentLooks(samples, LOOKS).map(Math.abs).sort();
  return sizes[Math.floor(0.99 * sizes.length)] ?? 0;
}
