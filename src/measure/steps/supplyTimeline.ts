import { hypot } from '../../base/elementary.ts';
import type { SampleRange } from '../../read/capture.ts';
import { phaseTrack } from '../../signal/phaseTrack.ts';
import { quantisationStep } from '../../signal/quantisation.ts';
import { roughFundamental } from '../../signal/roughFundamental.ts';
import { differenceNoise, median } from '../../signal/statistics.ts';
import { eventFigures } from '../breaks/eventFigures.ts';
import { type PhaseJump, seamAt } from '../breaks/seams.ts';
import type { BrownOut, Inrush, SupplyBreak, SupplyEvent } from '../breaks/supplyEvent.ts';
import { supplyEvents } from '../breaks/supplyEvents.ts';
import { ASSUMED_INSTRUMENT } from '../doubt/instrument.ts';
import {
  type ChannelRecord,
  type Excursion,
  excursions,
  type HalfCycleRms,
  halfCycleRms,
  type MeasuringChain,
  rmsBetweenSamples,
} from '../envelope.ts';
import { activePower } from '../power/nonsinusoidalPower.ts';
import { brownOuts } from './brownOuts.ts';
import { type EnvelopeMoves, envelopeMoves, isCurrent, litSpans, type Move } from './envelopeMoves.ts';
import { type LoadChange, loadChanges, withLoads } from './eventLoads.ts';
import { inrushAt } from './inrush.ts';
import { type LoadStep, stepTimeS } from './loadStep.ts';
import { loadSteps } from './loadSteps.ts';
import { longestSteadyStretch, type SteadyStretch } from './longestSteadyStretch.ts';

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
 * Follow a supply's voltage through a record: its envelope, load steps, breaks, dips and swells.
 *
 * Two passes: the first finds where something jumps; the second follows the fundamental up to each jump from
 * its own side only, so that no window looks across.
 *
 * @returns null where nothing repeats or no cycle is whole: there is no envelope then.
 */
export function supplyTimeline(
  record: ChannelRecord,
  options: SupplyCourseOptions = {},
): SupplyCourse | null {
  const { nominal = null, current = null, isLoaded = false } = options;
  const { chain = { instrument: ASSUMED_INSTRUMENT, scaleSource: 'scope and probe' } } = options;
  const { samples, intervalS, startS } = record;
  const omega = roughFundamental(samples);
  if (omega === null) return null;
  const { events: breaks, dark } = breaksOf(record, omega, chain, current, isLoaded);
  const noise = current === null ? 0 : noiseOf(current);
  const edges = dark.flatMap(({ from, to }) => [from, to]);
  const followed = (jumps: readonly number[]) => {
    const zeros = phaseTrack(samples, omega, jumps);
    const envelope = halfCycleRms(record, zeros);
    if (envelope === null) return null;
    const currentEnvelope = current === null ? null : halfCycleRms({ ...record, samples: current }, zeros);
    const reference = nominal ?? usualRms(envelope, dark);
    return {
      envelope,
      currentEnvelope,
      reference,
      moves: envelopeMoves(envelope, currentEnvelope, { reference, dark, currentNoise: noise }),
    };
  };
  const first = followed(edges);
  if (first === null) return null;
  const instants = first.moves.moves
    .filter(({ isBreak }) => !isBreak)
    .map((move) => (stepTimeS(first.envelope, move, first.moves.scatter) - startS) / intervalS);
  const { envelope, currentEnvelope, reference, moves } =
    instants.length === 0 ? first : (followed([...edges, ...instants]) ?? first);
  // Only where something moves is it worth a look at every sample.
  const betweenSamples = moves.moves.length === 0 ? 0 : rmsBetweenSamples(samples, (2 * Math.PI) / omega);
  const seen = currentEnvelope !== null && isCurrent(currentEnvelope, noise) ? currentEnvelope : null;
  const seams = seamsOf({ record, envelope, current: seen, dark, chain, omega }, moves);
  const loaded = { ...moves, moves: moves.moves.filter((move) => !seams.has(move)) };
  const low = brownOuts(envelope, { dark, scatter: moves.scatter, chain });
  const changes = loadChanges(envelope, seen, loaded.moves, moves.scatter);
  const found = [...seams.values()];
  const partings = found.flatMap((seam) => ('kind' in seam ? [seam] : []));
  const jumps = found.flatMap((seam) => ('kind' in seam ? [] : [seam]));
  const events = withLoads([...breaks, ...partings, ...low], {
    ...{ record, current, envelope, changes, dark, chain },
    isCurrentSeen: seen !== null,
  });
  const inrushes =
    current === null || seen === null
      ? []
      : inrushesOf({ record, current, envelope, dark, chain, noise }, changes, low);
  return {
    envelope,
    currentEnvelope,
    steps: loadSteps(envelope, seen, loaded, { nominal, chain, betweenSamples }).filter(
      (step) => !isOfBrownOut(step, low, 1 / envelope.frequencyHz[0]!),
    ),
    events: [...events, ...inrushes].sort((a, b) => startOf(a) - startOf(b)),
    jumps,
    excursions: nominal === null ? [] : withoutJumps(excursions(envelope, nominal), jumps, envelope),
    steady: longestSteadyStretch({
      ...{ envelope, current: seen, moves, dark, reference },
      sampleCount: samples.length,
    }),
    dark,
  };
}

/** A cycle that a jump of the phase lies in has no RMS of its own: a dip or swell of it is none. */
export function withoutJumps(
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

interface SeamContext {
  readonly record: ChannelRecord;
  readonly envelope: HalfCycleRms;
  /** Null: not recorded, or nothing on it. */
  readonly current: HalfCycleRms | null;
  readonly dark: readonly SampleRange[];
  readonly chain: MeasuringChain;
  readonly omega: number;
}

/** The moves of the voltage that no load makes, unless a current shows one. */
function seamsOf(
  { record, envelope, current, dark, chain, omega }: SeamContext,
  { moves, scatter }: EnvelopeMoves,
): ReadonlyMap<Move, PhaseJump | SupplyBreak> {
  const found = new Map<Move, PhaseJump | SupplyBreak>();
  const figures = eventFigures(record, chain);
  const sampleAt = (timeS: number): number => (timeS - record.startS) / record.intervalS;
  moves.forEach((move, i) => {
    if (move.isBreak || (current !== null && loadChanges(envelope, current, [move], scatter).length > 0))
      return;
    const [from, to] = [
      moves[i - 1] === undefined ? 0 : Math.ceil(envelope.from[moves[i - 1]!.after.from]!),
      moves[i + 1] === undefined
        ? record.samples.length
        : Math.floor(envelope.to[moves[i + 1]!.before.last]!),
    ];
    const around = sampleAt(stepTimeS(envelope, move, scatter));
    const before = { from: Math.max(from, dark.findLast((away) => away.to <= around)?.to ?? 0), to: around };
    const after = { from: around, to: Math.min(to, dark.find((away) => away.from >= around)?.from ?? to) };
    const level = move.before.mean;
    const isLevel = Math.abs(move.after.mean - level) < Math.max(SAME_LEVEL * level, 4 * scatter);
    const place = { around, before, after, peak: Math.SQRT2 * level, isLevel };
    const seam = seamAt(record, place, omega, figures);
    if (seam !== null) found.set(move, seam);
  });
  return found;
}

/** Of the voltage: what differs by less is the same. */
const SAME_LEVEL = 0.01;

/** The middle value of the cycles with voltage. */
function usualRms(envelope: HalfCycleRms, dark: readonly SampleRange[]): number {
  const lit = litSpans(envelope, dark).flatMap(({ first, last }) => [
    ...envelope.rms.subarray(first, last + 1),
  ]);
  return median(lit.length === 0 ? envelope.rms : lit);
}

/** Watts that a source which searches for a load would have found: common practice, no source. */
export const SEARCHED_LOAD_W = 25;

/** Breaks and bursts; bursts in which a load draws power are no search for one. */
function breaksOf(
  record: ChannelRecord,
  omega: number,
  chain: MeasuringChain,
  current: Float64Array | null,
  isLoaded: boolean,
): ReturnType<typeof supplyEvents> {
  const found = supplyEvents(record, omega, chain, isLoaded);
  if (current === null || found.events[0]?.kind !== 'idle bursts') return found;
  const lit = found.dark.slice(1).map(({ from }, i) => ({ from: found.dark[i]!.to, to: from }));
  const powers = lit.map((span) =>
    Math.abs(activePower(record.samples, current, span, (2 * Math.PI) / omega) ?? 0),
  );
  return powers.some((watts) => watts > SEARCHED_LOAD_W) ? supplyEvents(record, omega, chain, true) : found;
}

interface InrushContext {
  readonly record: ChannelRecord;
  readonly current: Float64Array;
  readonly envelope: HalfCycleRms;
  readonly dark: readonly SampleRange[];
  readonly chain: MeasuringChain;
  readonly noise: number;
}

/** The inrush at each moment at which a load comes on, or voltage to a load. */
function inrushesOf(
  { record, current, envelope, dark, chain, noise }: InrushContext,
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
    ...{ amperes: current, intervalS, startS, envelope, periodSamples, noise, chain },
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

/** What noise and rounding leave of a channel with nothing on it. */
function noiseOf(samples: Float64Array): number {
  return hypot(differenceNoise(samples), (quantisationStep(samples) ?? 0) / 2);
}
