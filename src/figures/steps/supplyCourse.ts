import { hypot } from '../../base/elementary/hypot.ts';
import type { SampleRange } from '../../capture/capture.ts';
import { differenceNoise } from '../../signal/differenceNoise.ts';
import { median } from '../../signal/median.ts';
import { quantisationStep } from '../../signal/quantisationStep.ts';
import { phaseTrack } from '../../signal/tracking/phaseTrack.ts';
import { roughFundamental } from '../../signal/tracking/roughFundamental.ts';
import { type Excursion, excursions } from '../envelope/excursions.ts';
import { type ChannelRecord, type HalfCycleRms, halfCycleRms } from '../envelope/halfCycleRms.ts';
import type { MeasuringChain } from '../envelope/measuringChain.ts';
import type { SupplyEvent } from '../gaps/supplyEvent.ts';
import { supplyEvents } from '../gaps/supplyEvents.ts';
import { ASSUMED_INSTRUMENT } from '../uncertainty/instrument.ts';
import { envelopeMoves } from './envelopeMoves.ts';
import type { LoadStep } from './loadStep.ts';
import { loadSteps } from './loadSteps.ts';
import { longestSteadyStretch, type SteadyStretch } from './longestSteadyStretch.ts';
import { stepTimeS } from './stepTime.ts';

/** How a supply goes along one record. */
export interface SupplyCourse {
  readonly envelope: HalfCycleRms;
  /** Of the current on the voltage's cycles; null: not recorded. */
  readonly currentEnvelope: HalfCycleRms | null;
  readonly steps: readonly LoadStep[];
  readonly events: readonly SupplyEvent[];
  /** Against nominal; empty where none is known. */
  readonly excursions: readonly Excursion[];
  /** What voltage and waveform should be measured on. */
  readonly steady: SteadyStretch;
  /** Stretches without voltage, in samples. */
  readonly dark: readonly SampleRange[];
}

export interface SupplyCourseOptions {
  /** Nominal RMS in the unit of the samples; null: unknown. */
  readonly nominal?: number | null;
  /** The load's current on the same time base. */
  readonly current?: Float64Array | null;
  readonly chain?: MeasuringChain;
}

/**
 * Follow a supply's voltage through a record: its envelope, load steps, breaks, dips and swells.
 *
 * Two passes: the first finds where something jumps; the second follows the fundamental up to each jump from
 * its own side only, so that no window looks across.
 *
 * @returns null where nothing repeats or no cycle is whole: there is no envelope then.
 */
export function supplyCourse(record: ChannelRecord, options: SupplyCourseOptions = {}): SupplyCourse | null {
  const { nominal = null, current = null } = options;
  const { chain = { instrument: ASSUMED_INSTRUMENT, scaleSource: 'scope and probe' } } = options;
  const { samples, intervalS, startS } = record;
  const omega = roughFundamental(samples);
  if (omega === null) return null;
  const { events, dark } = supplyEvents(record, omega, chain);
  const currentNoise = current === null ? 0 : noiseOf(current);
  const edges = dark.flatMap(({ from, to }) => [from, to]);
  const followed = (breaks: readonly number[]) => {
    const zeros = phaseTrack(samples, omega, breaks);
    const envelope = halfCycleRms(record, zeros);
    if (envelope === null) return null;
    const currentEnvelope = current === null ? null : halfCycleRms({ ...record, samples: current }, zeros);
    const reference = nominal ?? median(envelope.rms);
    return {
      envelope,
      currentEnvelope,
      reference,
      moves: envelopeMoves(envelope, currentEnvelope, { reference, dark, currentNoise }),
    };
  };
  const first = followed(edges);
  if (first === null) return null;
  const jumps = first.moves.moves
    .filter(({ isBreak }) => !isBreak)
    .map((move) => (stepTimeS(first.envelope, move, first.moves.scatter) - startS) / intervalS);
  const { envelope, currentEnvelope, reference, moves } =
    jumps.length === 0 ? first : (followed([...edges, ...jumps]) ?? first);
  return {
    envelope,
    currentEnvelope,
    steps: loadSteps(envelope, currentEnvelope, moves, { nominal, chain }),
    events,
    excursions: nominal === null ? [] : excursions(envelope, nominal),
    steady: longestSteadyStretch(envelope, moves, dark, samples.length, reference),
    dark,
  };
}

/** What noise and rounding leave of a channel with nothing on it. */
function noiseOf(samples: Float64Array): number {
  return hypot(differenceNoise(samples), (quantisationStep(samples) ?? 0) / 2);
}
