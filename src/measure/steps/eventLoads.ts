import type { SampleRange } from '../../read/capture.ts';
import type { HeldLoad, SupplyEvent } from '../breaks/supplyEvent.ts';
import { budgeted } from '../doubt/budget.ts';
import { alikeWithin, within } from '../doubt/component.ts';
import type { ChannelRecord, HalfCycleRms, MeasuringChain } from '../envelope.ts';
import { activePower } from '../power/nonsinusoidalPower.ts';
import type { Move } from './envelopeMoves.ts';
import { stepTimeS } from './loadStep.ts';

interface LoadContext {
  readonly record: ChannelRecord;
  /** The load's current on the same time base; null: not recorded. */
  readonly current: Float64Array | null;
  /** False where the current is noise: then there is no load. */
  readonly isCurrentSeen: boolean;
  readonly envelope: HalfCycleRms;
  readonly changes: readonly LoadChange[];
  /** Stretches without voltage, in samples. */
  readonly dark: readonly SampleRange[];
  readonly chain: MeasuringChain;
}

/** Cycles around an event in which a change of the load belongs to it. */
const AT_ONCE_CYCLES = 1.2;
/** From so many cycles on, only the later half tells the load: the first may be its inrush. */
const LONG_CYCLES = 4;
/** So little is no load, whatever a clamp's zero says: common practice, no source. */
const NOTHING_W = 2;

/** The load before each event, how much where a current was captured, and how long it was held. */
export function withLoads(events: readonly SupplyEvent[], context: LoadContext): readonly SupplyEvent[] {
  return events.map((event) => ({ ...event, ...loadOf(event, context) }));
}

function loadOf(event: SupplyEvent, context: LoadContext): HeldLoad {
  const { record, envelope } = context;
  if (event.kind === 'inrush') return {};
  const periodS = 1 / envelope.frequencyHz[0]!;
  const startS = event.startS.value;
  const sampleAt = (timeS: number): number => (timeS - record.startS) / record.intervalS;
  if (event.kind === 'start-up' || event.kind === 'failed start' || event.kind === 'idle bursts') {
    const until =
      event.kind === 'failed start' ? sampleAt(event.endS.value) : nextChange(context, sampleAt(startS));
    return watts(context, { from: sampleAt(startS), to: until }, periodS);
  }
  const cameS = voltageSince(context, startS, periodS);
  const before = context.changes.filter(({ atS }) => atS > cameS && atS < startS + AT_ONCE_CYCLES * periodS);
  // A load that comes on with low voltage is the one that this happens under. Only a current shows it: the voltage falls anyway.
  const ownS = event.kind === 'brown-out' && context.isCurrentSeen ? Number.POSITIVE_INFINITY : startS;
  const last = before.findLast(
    ({ atS }) => atS < ownS - (event.kind === 'brown-out' ? AT_ONCE_CYCLES : 0.25) * periodS,
  );
  const sinceS = last?.atS ?? cameS;
  const isAtOnce = startS - sinceS < AT_ONCE_CYCLES * periodS && event.kind === 'brown-out';
  const span = isAtOnce
    ? { from: sampleAt(startS + periodS), to: sampleAt(startS + event.durationS.value - periodS / 2) }
    : { from: sampleAt(last === undefined ? sinceS : sinceS + periodS / 2), to: sampleAt(startS) };
  const heldS = Math.max(0, startS - sinceS);
  const sinceDoubtS = last === undefined ? record.intervalS : periodS / 2;
  return {
    ...watts(context, span, periodS),
    heldS: budgeted(heldS, [
      within('when the load came on', sinceDoubtS, 's', 1),
      within('when it ended', (event.startS.uncertainty * Math.sqrt(3)) / 2, 's', 1),
      alikeWithin('time base', context.chain.instrument.timeBasePpm, 'ppm', heldS / 1e6),
    ]),
    heldAtLeast: last === undefined && cameS <= record.startS,
    ...(last === undefined || last.isOn ? {} : { isAfterLess: true }),
  };
}

/** When the voltage before an event came, or the record's start. */
function voltageSince({ record, dark }: LoadContext, startS: number, periodS: number): number {
  const at = (startS - periodS / 4 - record.startS) / record.intervalS;
  const away = dark.findLast(({ to }) => to <= at);
  return away === undefined ? record.startS : record.startS + away.to * record.intervalS;
}

/** The sample of the next change of the load or of the voltage behind another, or the record's end. */
function nextChange({ record, dark, changes }: LoadContext, from: number): number {
  const periodless = [
    ...dark.map((away) => away.from),
    ...changes.map(({ atS }) => (atS - record.startS) / record.intervalS),
  ].filter((at) => at > from + 1);
  return Math.min(record.samples.length, ...periodless);
}

function watts(
  { record, current, isCurrentSeen }: LoadContext,
  { from, to }: SampleRange,
  periodS: number,
): Pick<HeldLoad, 'loadW'> {
  if (current === null) return {};
  if (!isCurrentSeen) return { loadW: 0 };
  const periodSamples = periodS / record.intervalS;
  const late = to - from > LONG_CYCLES * periodSamples ? (from + to) / 2 : from;
  const power = activePower(record.samples, current, { from: late, to }, periodSamples);
  if (power === null) return {};
  // A clamp turned round gives the same load with its sign changed.
  const size = Math.abs(power);
  return { loadW: size < NOTHING_W ? 0 : Number(size.toPrecision(4)) };
}

/** A moment at which the load changes. */
export interface LoadChange {
  readonly atS: number;
  readonly isOn: boolean;
}

/** Of the larger: a current that changes by less, or a load that does, is the same. */
const SAME_RATIO = 0.1;

/**
 * The moments at which the load changes, in time order: by the current where it was captured, else wherever the voltage
 * steps.
 *
 * @param current - on the voltage's own cycles; null: not recorded.
 * @remarks A current that follows the voltage down or up, or rises as it falls so that the power stays, shows no other load.
 */
export function loadChanges(
  voltage: HalfCycleRms,
  current: HalfCycleRms | null,
  moves: readonly Move[],
  scatter: number,
): readonly LoadChange[] {
  return moves
    .filter(({ isBreak }) => !isBreak)
    .flatMap((move) => {
      if (current === null) {
        return [{ atS: stepTimeS(voltage, move, scatter), isOn: move.after.mean < move.before.mean }];
      }
      // Voltage and current of the same cycles: of others, one on its way down looks like a change of the other.
      const first = Math.min(move.last, move.from + 2);
      const [from, to] = [
        meansBetween(current, voltage, move.before.from, move.before.last),
        meansBetween(current, voltage, first, move.last),
      ];
      const changed = (a: number, b: number): boolean => Math.abs(b - a) > SAME_RATIO * Math.max(a, b);
      const isOther = changed(from.amperes, to.amperes) && changed(from.siemens, to.siemens);
      return isOther ? [{ atS: currentTimeS(current, voltage, move), isOn: to.siemens > from.siemens }] : [];
    });
}

/** RMS current, and what the load conducts: over the same values of the voltage, first to last. */
function meansBetween(
  current: HalfCycleRms,
  voltage: HalfCycleRms,
  first: number,
  last: number,
): { readonly amperes: number; readonly siemens: number } {
  const [fromS, toS] = [voltage.timeS[first]!, voltage.timeS[last]!];
  let [amperes, count] = [0, 0];
  current.rms.forEach((value, k) => {
    if (current.timeS[k]! < fromS || current.timeS[k]! > toS) return;
    amperes += value;
    count++;
  });
  const volts = voltage.rms.subarray(first, last + 1);
  const meanVolts = volts.reduce((sum, value) => sum + value, 0) / volts.length;
  return { amperes: amperes / count, siemens: amperes / count / meanVolts };
}

/**
 * When the current's RMS, in squares, has gone half of its largest way within a cycle near the change.
 *
 * @returns seconds on the file's own axis, within a quarter of a cycle for a sharp change.
 */
export function currentTimeS({ timeS, rms }: HalfCycleRms, voltage: HalfCycleRms, move: Move): number {
  const [fromS, toS] = [
    voltage.timeS[Math.max(0, move.from - 3)]!,
    voltage.timeS[Math.min(move.last, move.from + 4)]!,
  ];
  let [at, most] = [-1, 0];
  for (let k = 1; k + 1 < rms.length; k++) {
    if (timeS[k]! < fromS || timeS[k]! > toS) continue;
    const way = Math.abs(rms[k + 1]! ** 2 - rms[k - 1]! ** 2);
    if (way > most) [at, most] = [k, way];
  }
  if (at < 0) return voltage.timeS[move.from]!;
  // One value straddles a sharp change at its place in its window: the share that it has gone tells where.
  const [before, here, after] = [-1, 0, 1].map((by) => rms[at + by]! ** 2) as [number, number, number];
  const periodS = timeS[at + 1]! - timeS[at - 1]!;
  const gone = Math.max(0, Math.min(1, (here - before) / (after - before)));
  return timeS[at]! + (0.5 - gone) * periodS;
}
