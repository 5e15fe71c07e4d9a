import { hypot } from '../../base/elementary.ts';
import type { SampleRange } from '../../read/capture.ts';
import { phaseTrack } from '../../signal/phaseTrack.ts';
import { quantisationStep } from '../../signal/quantisation.ts';
import { roughFundamental } from '../../signal/roughFundamental.ts';
import { differenceNoise, median, moments, NORMAL_MEDIAN } from '../../signal/statistics.ts';
import { darkSpells } from '../breaks/darkSpells.ts';
import type { DarkSpell } from '../breaks/eventFigures.ts';
import { type SeamSeen, seamAt } from '../breaks/seams.ts';
import { type ChannelRecord, type HalfCycleRms, halfCycleRms, rmsBetweenSamples } from '../envelope.ts';
import { isDirect } from '../waveEstimate.ts';
import { type LowStretch, lowStretches } from './brownOuts.ts';
import {
  type Candidates,
  candidates,
  type EnvelopeMoves,
  isCurrent,
  litSpans,
  type Move,
  movesAmong,
} from './envelopeMoves.ts';
import { loadChanges } from './eventLoads.ts';
import { stepTimeS } from './loadStep.ts';
import { stepMoves } from './loadSteps.ts';
import { longestSteadyStretch, type SteadyStretch } from './longestSteadyStretch.ts';

/** Where something happens to a supply along one record: the first pass, before scale and nominal are known. */
export interface FollowedSupply {
  readonly record: ChannelRecord;
  /** The load's, on the same time base; null: not recorded. */
  readonly current: Float64Array | null;
  /** Standard deviation of the current's noise and rounding. */
  readonly currentNoise: number;
  /** The fundamental, rough, radians a sample. */
  readonly omega: number;
  readonly envelope: HalfCycleRms;
  /** Of the current on the voltage's cycles; null: not recorded. */
  readonly currentEnvelope: HalfCycleRms | null;
  /** The same; null also where there is nothing on it. */
  readonly loadEnvelope: HalfCycleRms | null;
  readonly spells: readonly DarkSpell[];
  /** Stretches without voltage, in samples. */
  readonly dark: readonly SampleRange[];
  readonly low: readonly LowStretch[];
  /** What may be a step, for nominal to decide. */
  readonly candidates: Candidates;
  /** Of the candidates, by the first value that moves: those that no load makes. */
  readonly seams: ReadonlyMap<number, SeamSeen>;
  /** Where the wave goes on at another phase without a move of its voltage, in time order. */
  readonly slips: readonly SeamSeen[];
  /** Middle value of the cycles with voltage, in the unit of the samples: what counts until nominal is known. */
  readonly usual: number;
  /** How far two cycles of one wave may differ for where their samples fall, of `rmsBetweenSamples`. */
  readonly betweenSamples: number;
  /** What voltage and waveform should be measured on. */
  readonly steady: SteadyStretch;
  /** True where something steps, breaks off or jumps in phase. */
  readonly isUnsteady: boolean;
}

/**
 * Follow a supply's voltage through a record: its envelope, and the places where it steps, breaks off or is low.
 *
 * The envelope takes two looks: the first finds where something jumps; the second follows the fundamental up to each
 * jump from its own side only, so that no window looks across.
 *
 * @param current - the load's, on the same time base; null: not recorded.
 * @returns null where nothing repeats or no cycle is whole: there is no envelope then.
 */
export function followSupply(record: ChannelRecord, current: Float64Array | null): FollowedSupply | null {
  const { samples, intervalS, startS } = record;
  const omega = roughFundamental(samples);
  if (omega === null) return null;
  const spells = darkSpells(samples, omega);
  // So much DC would turn the phase of its ripple.
  const { mean, standardDeviation } = moments(samples);
  const moving = isDirect(mean, standardDeviation) ? samples.map((x) => x - mean) : samples;
  const dark = spells.map(({ range }) => range);
  const currentNoise = current === null ? 0 : noiseOf(current);
  const edges = dark.flatMap(({ from, to }) => [from, to]);
  const look = (jumps: readonly number[]) => {
    const zeros = phaseTrack(moving, omega, jumps);
    const envelope = halfCycleRms(record, zeros);
    if (envelope === null) return null;
    const currentEnvelope = current === null ? null : halfCycleRms({ ...record, samples: current }, zeros);
    const usual = usualRms(envelope, dark);
    const found = candidates(envelope, currentEnvelope, { usual, dark, currentNoise });
    return {
      envelope,
      currentEnvelope,
      usual,
      candidates: found,
      all: movesAmong(found, envelope, usual, 0),
    };
  };
  const first = look(edges);
  if (first === null) return null;
  const instants = first.all.moves
    .filter(({ isBreak }) => !isBreak)
    .map((move) => (stepTimeS(first.envelope, move, first.all.scatter) - startS) / intervalS);
  const second = instants.length === 0 ? first : (look([...edges, ...instants]) ?? first);
  const { envelope, currentEnvelope, usual } = second;
  const moves = movesAmong(second.candidates, envelope, usual);
  const loadEnvelope =
    currentEnvelope !== null && isCurrent(currentEnvelope, currentNoise) ? currentEnvelope : null;
  const seen = { envelope, loadEnvelope, dark, omega };
  const seams = seamsOf(record, seen, second.all);
  const slips = slipsOf(record, seen, second.all);
  const low = lowStretches(envelope, dark);
  // Only where something may move is it worth a look at every sample.
  const { voltage: fast, current: fastCurrent } = second.candidates;
  const betweenSamples =
    fast.length + fastCurrent.length === 0 ? 0 : rmsBetweenSamples(samples, (2 * Math.PI) / omega);
  const others = withoutSeams(moves, seams);
  const steps = stepMoves(envelope, loadEnvelope, others, { nominal: null, betweenSamples });
  return {
    ...{ record, current, currentNoise, omega, envelope, currentEnvelope, loadEnvelope, spells, dark, low },
    ...{ candidates: second.candidates, seams, slips, usual, betweenSamples },
    steady: longestSteadyStretch({
      ...{ envelope, current: loadEnvelope, moves, dark, reference: usual },
      sampleCount: samples.length,
    }),
    isUnsteady:
      spells.length + low.length + steps.length + slips.length > 0 ||
      others.moves.length < moves.moves.length,
  };
}

/** The moves that a load may have made. */
export function withoutSeams(
  { moves, scatter }: EnvelopeMoves,
  seams: ReadonlyMap<number, SeamSeen>,
): EnvelopeMoves {
  return { moves: moves.filter(({ from }) => !seams.has(from)), scatter };
}

/** The moves of the voltage that no load makes, unless a current shows one. */
function seamsOf(
  { samples, startS, intervalS }: ChannelRecord,
  {
    envelope,
    loadEnvelope,
    dark,
    omega,
  }: Pick<FollowedSupply, 'envelope' | 'loadEnvelope' | 'dark' | 'omega'>,
  { moves, scatter }: EnvelopeMoves,
): ReadonlyMap<number, SeamSeen> {
  const found = new Map<number, SeamSeen>();
  const isOfLoad = (move: Move): boolean =>
    loadEnvelope !== null && loadChanges(envelope, loadEnvelope, [move], scatter).length > 0;
  moves.forEach((move, i) => {
    if (move.isBreak || isOfLoad(move)) return;
    const [from, to] = [
      moves[i - 1] === undefined ? 0 : Math.ceil(envelope.from[moves[i - 1]!.after.from]!),
      moves[i + 1] === undefined ? samples.length : Math.floor(envelope.to[moves[i + 1]!.before.last]!),
    ];
    const around = (stepTimeS(envelope, move, scatter) - startS) / intervalS;
    const before = { from: Math.max(from, dark.findLast((away) => away.to <= around)?.to ?? 0), to: around };
    const after = { from: around, to: Math.min(to, dark.find((away) => away.from >= around)?.from ?? to) };
    const level = move.before.mean;
    const isLevel = Math.abs(move.after.mean - level) < Math.max(SAME_LEVEL * level, 4 * scatter);
    const place = { around, before, after, peak: Math.SQRT2 * level, isLevel };
    const seam = seamAt(samples, place, omega);
    if (seam !== null) found.set(move.from, seam);
  });
  return found;
}

/** Of the usual frequency, and standard deviations of it: a half cycle farther from it may hold a jump of phase. */
const SLIP = { ratio: 0.01, deviations: 6 } as const;
/** Half cycles that a jump shows in. */
const SLIP_REACH = 8;
/** More such places are no jumps of a supply, but a wave that has no steady frequency. */
const MOST_SLIPS = 5;

/** Jumps of phase that leave the RMS as it is: each half cycle has its own length, but beside a jump a wrong one. */
function slipsOf(
  { samples, startS, intervalS }: ChannelRecord,
  { envelope, dark, omega }: { envelope: HalfCycleRms; dark: readonly SampleRange[]; omega: number },
  { moves }: EnvelopeMoves,
): readonly SeamSeen[] {
  const { frequencyHz, rms } = envelope;
  const usual = median(frequencyHz);
  const off = frequencyHz.map((hertz) => Math.abs(hertz / usual - 1));
  const least = Math.max(SLIP.ratio, (SLIP.deviations * median(off)) / NORMAL_MEDIAN);
  const places: number[] = [];
  for (const span of litSpans(envelope, dark)) {
    for (let k = span.first; k <= span.last; k++) {
      const last = places.at(-1);
      const isNear = last !== undefined && last >= span.first && k - last < SLIP_REACH;
      if (off[k]! <= least) continue;
      if (!isNear) places.push(k);
      else if (off[k]! > off[last]!) places[places.length - 1] = k;
    }
  }
  if (places.length > MOST_SLIPS) return [];
  const sampleAt = (k: number): number => (envelope.timeS[k]! - startS) / intervalS;
  return places.flatMap((k, i) => {
    if (moves.some(({ from, after }) => k > from - SLIP_REACH && k < after.from + SLIP_REACH)) return [];
    const around = sampleAt(k);
    const nearest = [
      ...[places[i - 1], places[i + 1]].flatMap((place) => (place === undefined ? [] : [sampleAt(place)])),
      ...moves.map(({ from }) => sampleAt(from)),
      ...dark.flatMap(({ from, to }) => [from, to]),
    ];
    const before = { from: Math.ceil(Math.max(0, ...nearest.filter((at) => at < around))), to: around };
    const after = {
      from: around,
      to: Math.floor(Math.min(samples.length, ...nearest.filter((at) => at > around))),
    };
    const seam = seamAt(samples, { around, before, after, peak: Math.SQRT2 * rms[k]!, isLevel: true }, omega);
    return seam === null || seam.isBreak ? [] : [seam];
  });
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

/** What noise and rounding leave of a channel with nothing on it. */
function noiseOf(samples: Float64Array): number {
  return hypot(differenceNoise(samples), (quantisationStep(samples) ?? 0) / 2);
}
