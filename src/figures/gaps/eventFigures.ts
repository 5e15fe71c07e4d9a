import type { MeasuredFigure } from '../../base/figure.ts';
import type { ChannelRecord } from '../envelope/halfCycleRms.ts';
import type { MeasuringChain } from '../envelope/measuringChain.ts';
import { budgeted } from '../uncertainty/budget.ts';
import { within } from '../uncertainty/component.ts';
import { scaleComponents } from '../uncertainty/scaleComponents.ts';
import type { Place } from './departure.ts';
import type { CutOff, FailedStart, StartUp } from './supplyEvent.ts';

/** Figures of an event in one record, and the events that are no more than a few of them. */
export interface EventFigures {
  /** Time of a position in samples, known to lie within ± halfWidth samples. */
  time(position: number, halfWidth: number): MeasuredFigure;
  /** A time between two positions. */
  duration(samples: number, halfWidths: readonly [number, number]): MeasuredFigure;
  /** Largest |v| over a run of samples. */
  largest(from: number, to: number): MeasuredFigure;
  startUp(at: Place, periodSamples: number): StartUp;
  cutOff(at: Place): CutOff;
  failedStart(from: Place, to: Place): FailedStart;
}

export function eventFigures(record: ChannelRecord, chain: MeasuringChain): EventFigures {
  const { instrument, scaleSource } = chain;
  const { samples, intervalS, startS } = record;
  const timeBase = (seconds: number) => within('time base', instrument.timeBasePpm, 'ppm', seconds / 1e6);
  const place = (halfWidth: number, source = 'where the voltage leaves or joins') =>
    within(source, halfWidth * intervalS, 's', 1);
  const time = (position: number, halfWidth: number): MeasuredFigure => {
    const offset = position * intervalS;
    return budgeted(startS + offset, [place(halfWidth), timeBase(offset)]);
  };
  const largest = (from: number, to: number): MeasuredFigure => {
    let most = 0;
    for (const v of samples.subarray(Math.max(0, from), to)) if (Math.abs(v) > most) most = Math.abs(v);
    return budgeted(most, scaleComponents(most, instrument, scaleSource));
  };
  return {
    time,
    duration: (length, [start, end]) =>
      budgeted(length * intervalS, [
        place(start, 'where it starts'),
        place(end, 'where it ends'),
        timeBase(length * intervalS),
      ]),
    largest,
    startUp: ({ position, halfWidth }, periodSamples) => ({
      kind: 'start-up',
      startS: time(position, halfWidth),
      returnPeak: largest(Math.floor(position), Math.ceil(position + halfWidth + periodSamples)),
    }),
    cutOff: ({ position, halfWidth }) => ({ kind: 'cut-off', startS: time(position, halfWidth) }),
    failedStart: (from, to) => ({
      kind: 'failed start',
      startS: time(from.position, from.halfWidth),
      endS: time(to.position, to.halfWidth),
      returnPeak: largest(Math.floor(from.position), Math.ceil(to.position)),
    }),
  };
}
