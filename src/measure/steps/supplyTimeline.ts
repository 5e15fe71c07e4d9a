import type { SampleRange } from '../../read/capture.ts';
import { quantisationStep } from '../../signal/quantisation.ts';
import { eventFigures } from '../breaks/eventFigures.ts';
import { type PhaseJump, seamFigures } from '../breaks/seams.ts';
import type { BrownOut, Inrush, SupplyEvent } from '../breaks/supplyEvent.ts';
import { supplyEvents } from '../breaks/supplyEvents.ts';
import { ASSUMED_INSTRUMENT } from '../doubt/instrument.ts';
import {
  type ChannelRecord,
  type Excursion,
  excursions,
  type HalfCycleRms,
  type MeasuringChain,
} from '../envelope.ts';
import { activePower } from '../power/nonsinusoidalPower.ts';
import { brownOuts } from './brownOuts.ts';
import { movesAmong } from './envelopeMoves.ts';
import { type LoadChange, loadChanges, withLoads } from './eventLoads.ts';
import { type FollowedSupply, followSupply, withoutSeams } from './followSupply.ts';
import { inrushAt } from './inrush.ts';
import type { LoadStep } from './loadStep.ts';
import { loadSteps } from './loadSteps.ts';
import type { SteadyStretch } from './longestSteadyStretch.ts';

/** How a supply goes along one record. */
export interface SupplyCourse {
  readonly envelope: HalfCycleRms;
  /** Of the current on the voltage's cycles; null: not recorded. */
  readonly currentEnvelope: HalfCycleRms | null;
  readonly steps: readonly LoadStep[];
  readonly events: readonly SupplyEvent[];
  /** Where the wave goes on at another phase: no load does that. */
  readonly jumps: readonly PhaseJump[];
  /** Against nominal; empty where none is known. */
  readonly excursions: readonly Excursion[];
  /** What voltage and waveform should be measured on. */
  readonly steady: SteadyStretch;
  /** Stretches without voltage, in samples. */
  readonly dark: readonly SampleRange[];
}

interface SupplyCourseOptions {
  /** Nominal RMS in the unit of the samples; null: unknown. */
  readonly nominal?: number | null;
  /** The load's current on the same time base. */
  readonly current?: Float64Array | null;
  readonly chain?: MeasuringChain;
  /** True where a load of some size is known to be on. */
  readonly isLoaded?: boolean;
}

/**
 * The course of a supply in its three parts: what happens where; its events with their figures; the steps and excursions
 * that nominal makes of it.
 *
 * @returns null where nothing repeats or no cycle is whole: there is no envelope then.
 */
export function supplyTimeline(
  record: ChannelRecord,
  options: SupplyCourseOptions = {},
): SupplyCourse | null {
  const { nominal = null, current = null, isLoaded = false } = options;
  const { chain = { instrument: ASSUMED_INSTRUMENT, scaleSource: 'scope and probe' } } = options;
  const followed = followSupply(record, current);
  if (followed === null) return null;
  const happened = eventsOf(followed, chain, isLoaded);
  return { ...followed, ...happened, ...againstNominal(followed, happened, nominal, chain) };
}

/** What happens to a supply, whatever its nominal voltage. */
export interface SupplyHappenings {
  readonly events: readonly SupplyEvent[];
  /** Where the wave goes on at another phase: no load does that. */
  readonly jumps: readonly PhaseJump[];
}

/** The events of a supply that was followed, with their figures and the load that each happened under. */
export function eventsOf(
  followed: FollowedSupply,
  chain: MeasuringChain,
  isLoaded: boolean,
): SupplyHappenings {
  const { record, current, envelope, loadEnvelope, seams, dark, candidates, usual, slips } = followed;
  const moves = movesAmong(candidates, envelope, usual);
  const figures = eventFigures(record, chain);
  const found = [...moves.moves.flatMap(({ from }) => seams.get(from) ?? []), ...slips].map((seam) =>
    seamFigures(seam, figures),
  );
  const partings = found.flatMap((seam) => ('kind' in seam ? [seam] : []));
  const jumps = found.flatMap((seam) => ('kind' in seam ? [] : [seam]));
  const low = brownOuts(followed.low, envelope, moves.scatter, chain);
  const changes = loadChanges(envelope, loadEnvelope, withoutSeams(moves, seams).moves, moves.scatter);
  const events = withLoads([...breaksOf(followed, chain, isLoaded), ...partings, ...low], {
    ...{ record, current, envelope, changes, dark, chain },
    isCurrentSeen: loadEnvelope !== null,
  });
  const inrushes =
    current === null || loadEnvelope === null ? [] : inrushesOf(followed, current, chain, changes, low);
  return { events: [...events, ...inrushes].sort((a, b) => startOf(a) - startOf(b)), jumps };
}

/**
 * What only nominal tells: which of the candidates are steps, how large in % of it, and where the voltage leaves its
 * limits. Nothing is found anew.
 *
 * @param nominal - RMS in the unit of the samples; null: unknown.
 */
export function againstNominal(
  { envelope, loadEnvelope, candidates, seams, usual, betweenSamples }: FollowedSupply,
  { events, jumps }: SupplyHappenings,
  nominal: number | null,
  chain: MeasuringChain,
): Pick<SupplyCourse, 'steps' | 'excursions'> {
  const moves = withoutSeams(movesAmong(candidates, envelope, nominal ?? usual), seams);
  const low = events.flatMap((event) => (event.kind === 'brown-out' ? [event] : []));
  return {
    steps: loadSteps(envelope, loadEnvelope, moves, { nominal, chain, betweenSamples }).filter(
      (step) => !isOfBrownOut(step, low, 1 / envelope.frequencyHz[0]!),
    ),
    excursions: nominal === null ? [] : withoutJumps(excursions(envelope, nominal), jumps, envelope),
  };
}

/** A course on another gain: its voltages by the factor. @param samples - those of the record times the factor. */
export function scaledSupply(
  followed: FollowedSupply,
  factor: number,
  samples: Float64Array,
): FollowedSupply {
  const { record, envelope, low, candidates, usual, betweenSamples } = followed;
  return {
    ...followed,
    record: { ...record, samples },
    envelope: { ...envelope, rms: envelope.rms.map((x) => factor * x) },
    low: low.map((stretch) => {
      const { level, count } = stretch.before;
      return { ...stretch, before: { level: factor * level, count } };
    }),
    candidates: {
      ...candidates,
      voltage: candidates.voltage.map((change) => ({ ...change, size: factor * change.size })),
      scatter: factor * candidates.scatter,
      restless: factor * candidates.restless,
    },
    usual: factor * usual,
    betweenSamples: factor * betweenSamples,
  };
}

/** A cycle that a jump of the phase lies in has no RMS of its own: a dip or swell of it is none. */
function withoutJumps(
  found: readonly Excursion[],
  jumps: readonly PhaseJump[],
  { frequencyHz }: HalfCycleRms,
): readonly Excursion[] {
  const nearS = 1.5 / frequencyHz[0]!;
  return found.filter(
    ({ startS, endS }) =>
      !jumps.some(
        ({ atS: { value } }) => value > startS - nearS && value < endS + nearS && endS - startS < 2 * nearS,
      ),
  );
}

/** Watts that a source which searches for a load would have found: common practice, no source. */
export const SEARCHED_LOAD_W = 25;

/** Breaks and bursts; bursts in which a load draws power are no search for one. */
function breaksOf(
  { record, omega, current, spells }: FollowedSupply,
  chain: MeasuringChain,
  isLoaded: boolean,
): readonly SupplyEvent[] {
  const found = supplyEvents(spells, record, omega, chain, isLoaded);
  if (current === null || found[0]?.kind !== 'idle bursts') return found;
  const lit = spells.slice(1).map(({ range }, i) => ({ from: spells[i]!.range.to, to: range.from }));
  const powers = lit.map((span) =>
    Math.abs(activePower(record.samples, current, span, (2 * Math.PI) / omega) ?? 0),
  );
  return powers.some((watts) => watts > SEARCHED_LOAD_W)
    ? supplyEvents(spells, record, omega, chain, true)
    : found;
}

/** The inrush at each moment at which a load comes on, or voltage to a load. */
function inrushesOf(
  { record, envelope, dark, currentNoise }: FollowedSupply,
  current: Float64Array,
  chain: MeasuringChain,
  changes: readonly LoadChange[],
  low: readonly BrownOut[],
): readonly Inrush[] {
  const { intervalS, startS } = record;
  const sampleAt = (timeS: number): number => (timeS - startS) / intervalS;
  const starts = dark.filter(({ to }) => to < current.length).map(({ to }) => to);
  const on = [...changes.filter(({ isOn }) => isOn).map(({ atS }) => sampleAt(atS)), ...starts];
  const ends = [
    ...changes.map(({ atS }) => sampleAt(atS)),
    ...dark.map(({ from }) => from),
    ...low.map((event) => sampleAt(event.startS.value)),
    current.length,
  ];
  const periodSamples = 1 / envelope.frequencyHz[0]! / intervalS;
  const inrushRecord = {
    ...{ amperes: current, intervalS, startS, envelope, periodSamples, noise: currentNoise, chain },
    step: quantisationStep(current),
  };
  return on.flatMap((at) => {
    const until = Math.min(...ends.filter((end) => end > at + 2 * periodSamples));
    const found = Number.isFinite(until) ? inrushAt(inrushRecord, at, until) : null;
    return found === null ? [] : [found];
  });
}

/** The voltage's way into and out of a brown-out, and what it does in it, is told by that. */
function isOfBrownOut({ atS }: LoadStep, low: readonly BrownOut[], periodS: number): boolean {
  return low.some(
    ({ startS, durationS }) =>
      atS.value > startS.value - OWN_CYCLES * periodS &&
      atS.value < startS.value + durationS.value + OWN_CYCLES * periodS,
  );
}

/** Cycles around a brown-out within which a step is its own way down or up. */
const OWN_CYCLES = 2;

const startOf = (event: SupplyEvent): number => (event.kind === 'inrush' ? event.atS : event.startS).value;
