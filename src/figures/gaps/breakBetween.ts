import type { Figure } from '../../base/figure.ts';
import type { SampleRange } from '../../capture/capture.ts';
import { differenceNoise } from '../../signal/differenceNoise.ts';
import { median } from '../../signal/median.ts';
import { quantisationStep } from '../../signal/quantisationStep.ts';
import type { ChannelRecord } from '../envelope/halfCycleRms.ts';
import { budgeted } from '../uncertainty/budget.ts';
import { scatter } from '../uncertainty/component.ts';
import type { DarkRun } from './darkRuns.ts';
import { type Departure, departure } from './departure.ts';
import type { EventFigures } from './eventFigures.ts';
import { type SteadySide, steadySide } from './steadySide.ts';
import type { SupplyBreak } from './supplyEvent.ts';

/** A run without voltage and the voltage on both sides, in samples. */
export interface BreakPlace {
  readonly before: SampleRange;
  readonly run: DarkRun;
  readonly after: SampleRange;
}

/** Longest break that is still called a transfer. */
const TRANSFER_S = 0.2;
/** Of a period: less contradicts neither side for sure and is no break. 1 ms at 50 Hz. */
const LEAST_CYCLES = 0.05;
/** Of the peak: what is left in a break, RMS; more is a dip. */
const LEFT_RATIO = 0.1;
/** Of a period: how far outside the dark run its true ends are looked for. */
const MARGIN_CYCLES = 0.2;

/**
 * A break of the voltage, timed against the waves before and after as if each went on.
 *
 * @param omega - the fundamental, rough, radians a sample.
 * @returns null where the waves before and after explain the run between them, as when a stepped wave's
 * pulses grow narrower, or where too much voltage is left; else the break and the samples it covers.
 */
export function breakBetween(
  record: ChannelRecord,
  { before, run, after }: BreakPlace,
  omega: number,
  figures: EventFigures,
): { readonly range: SampleRange; readonly event: SupplyBreak } | null {
  const { samples } = record;
  const periodSamples = (2 * Math.PI) / omega;
  const margin = Math.floor(MARGIN_CYCLES * periodSamples);
  const early = { from: before.from, to: Math.max(before.from, run.from - margin) };
  const late = { from: Math.min(after.to, run.to + margin), to: after.to };
  const [left, right] = [steadySide(samples, early, true, omega), steadySide(samples, late, false, omega)];
  // Without the waves beside it a run that one of them could explain proves nothing.
  if (!run.sure && (left === null || right === null)) return null;
  const inside = samples.subarray(run.from, run.to);
  const rest = median(inside);
  const voltage = samples.subarray(early.from, late.to);
  const noise = Math.max(
    differenceNoise(voltage),
    // A record that rests on single codes hides noise of up to half a step.
    (quantisationStep(voltage) ?? 0) / 2,
    1e-3 * figures.largest(early.from, late.to).value,
  );
  const search = { from: early.to, to: late.from };
  const start =
    (left && departure(samples, left, { ...search, to: run.to }, rest, noise, false)) ?? at(run.from);
  const end =
    (right && departure(samples, right, { ...search, from: run.from }, rest, noise, true)) ?? at(run.to);
  if (end.earliest - start.latest < LEAST_CYCLES * periodSamples) return null;
  const away = samples.subarray(start.latest, end.earliest);
  if (rmsOf(away) > LEFT_RATIO * figures.largest(early.from, late.to).value) return null;
  const [startAt, endAt] = [middle(start), middle(end)];
  const durationS = figures.duration(endAt - startAt, [halfWidth(start), halfWidth(end)]);
  return {
    range: { from: start.earliest, to: end.latest },
    event: {
      kind: durationS.value <= TRANSFER_S ? 'transfer' : 'outage',
      startS: figures.time(startAt, halfWidth(start)),
      endS: figures.time(endAt, halfWidth(end)),
      durationS,
      phaseJumpDeg: phaseJump(left, right, endAt),
      residual: figures.largest(start.latest, end.earliest),
      returnPeak: figures.largest(end.earliest, end.earliest + Math.ceil(periodSamples)),
    },
  };
}

function rmsOf(samples: Float64Array): number {
  return Math.sqrt(samples.reduce((sum, v) => (Number.isNaN(v) ? sum : sum + v * v), 0) / samples.length);
}

/** Where a side is too short to be carried on, the dark run's own end stands. */
const at = (n: number): Departure => ({ earliest: n, latest: n });

/** A wave that leaves before sample n leaves half a sample earlier. */
const middle = ({ earliest, latest }: Departure): number => (earliest + latest) / 2 - 0.5;

const halfWidth = ({ earliest, latest }: Departure): number => (latest - earliest) / 2 + 0.5;

function phaseJump(left: SteadySide | null, right: SteadySide | null, position: number): Figure {
  if (left === null || right === null) {
    return { value: null, reason: 'under 1.3 cycles of voltage on one side of the break' };
  }
  const turns = (right.phaseRadAt(position) - left.phaseRadAt(position)) / (2 * Math.PI);
  const wrapped = 360 * (turns - Math.ceil(turns - 0.5));
  const degrees = (side: SteadySide): number => (180 / Math.PI) * side.phaseDeviationRadAt(position);
  return budgeted(wrapped, [
    scatter('phase of the wave before, carried on', degrees(left), '°'),
    scatter('phase of the wave after, carried back', degrees(right), '°'),
  ]);
}
