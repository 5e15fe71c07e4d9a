import type { SampleRange } from '../../read/capture.ts';
import type { HalfCycleRms } from '../envelope.ts';
import { type Change, changes, isBeside, isOver, type SizedChange } from './changes.ts';
import type { ValueSpan } from './sharpEdges.ts';

/** A change of the envelope between two stretches that it settles in. Indices of the envelope's values. */
export interface Move {
  /** First value that moves. */
  readonly from: number;
  /** Last value before the next move, or of the record. */
  readonly last: number;
  readonly before: SettledStretch;
  readonly after: SettledStretch;
  /** True where the voltage is away within it: a break, a start or an end, no step of the load. */
  readonly isBreak: boolean;
}

export interface EnvelopeMoves {
  readonly moves: readonly Move[];
  /** Standard deviation of one value of the voltage. */
  readonly scatter: number;
}

/** Of nominal: a step is a change over it within two cycles. */
export const STEP_RATIO: number = 0.01;
/** Of nominal: an envelope within it is settled. */
const SETTLED_RATIO = 0.002;
/** Of the largest current: a change over it shows a step that a stiff voltage doesn't. */
const CURRENT_STEP_RATIO = 0.1;

/** Values within which a voltage that comes or goes may still move: five cycles, no step of the load. */
const COMING = 10;
/** Values behind a change that show a level before the voltage goes, and within which one begins: two cycles. */
const LEVEL = 4;
/** Values that a level takes behind a sharp edge. */
const SHARP_LEVEL = 2;
/** A current under so many times its noise is none. */
const CURRENT_OVER_NOISE = 4;

/**
 * What of an envelope moves fast, found before it is known what its percentages are of: nominal decides later which of
 * it counts, and finds nothing anew.
 */
export interface Candidates {
  /** Of the voltage, in time order, down to a little less than a step of the usual RMS. */
  readonly voltage: readonly SizedChange[];
  /** Of the current; empty where none is recorded. */
  readonly current: readonly Change[];
  /** Parts with voltage. */
  readonly spans: readonly ValueSpan[];
  /** Standard deviation of one value of the voltage, and of what it goes by within two cycles. */
  readonly scatter: number;
  readonly restless: number;
}

/** Of a step of the usual RMS: a nominal so much lower would still take it for one. */
const LOWEST_NOMINAL = 0.8;

interface CandidateOptions {
  /** Usual RMS of the voltage, in its unit. */
  readonly usual: number;
  /** Stretches without voltage, in samples. */
  readonly dark: readonly SampleRange[];
  /** Standard deviation of the current's noise and rounding, in its unit. */
  readonly currentNoise: number;
}

/**
 * Every fast change of a supply, in the voltage or in the current. Stretches with voltage are looked at one by one:
 * what happens when it goes and comes is no change of the load.
 *
 * @param current - on the voltage's own cycles; null: not recorded.
 */
export function candidates(
  voltage: HalfCycleRms,
  current: HalfCycleRms | null,
  { usual, dark, currentNoise }: CandidateOptions,
): Candidates {
  const spans = litSpans(voltage, dark);
  const least = STEP_RATIO * usual;
  const { changes: found, scatter, restless } = changes(voltage.rms, { least, spans });
  // Those that begin or end within a step are its own beginning or end.
  const low = changes(voltage.rms, { least: LOWEST_NOMINAL * least, spans }).changes.filter(
    (change) => !found.some((other) => isBeside(change, other)),
  );
  return {
    voltage: [...found, ...low].sort((a, b) => a.before - b.before),
    current: current === null ? [] : ofCurrent(voltage, current, { dark, currentNoise }),
    ...{ spans, scatter, restless },
  };
}

/**
 * The candidates that are moves of a supply of this voltage, with the levels that it settles at before and after each.
 *
 * @param reference - nominal voltage, or the usual RMS where none is known, in the unit of the RMS.
 * @param least - how much a move goes by at least; 0 for all candidates.
 */
export function movesAmong(
  { voltage: found, current, spans, scatter, restless }: Candidates,
  voltage: HalfCycleRms,
  reference: number,
  least: number = STEP_RATIO * reference,
): EnvelopeMoves {
  const over = found.filter((change) => isOver(change, restless, least));
  const all = withCurrent(over, current);
  const band = Math.max(SETTLED_RATIO * reference, 4 * scatter);
  const moves = spans.flatMap((span) => {
    const inside = all.filter(({ before }) => before >= span.first && before < span.last);
    let first = span.first;
    return inside.map((change, i): Move => {
      const next = inside[i + 1];
      const last = next?.before ?? span.last;
      const before = settledStretch(
        voltage.rms,
        Math.min(first, change.before),
        change.before,
        band,
        SHARP_LEVEL,
      );
      const from = change.levelFrom ?? change.before + 1;
      const isShort = change.levelFrom !== undefined && last - from < 2 * LEVEL;
      const after = settledStretch(
        voltage.rms,
        Math.min(from, last),
        last,
        band,
        isShort ? SHARP_LEVEL : LEAST_VALUES,
      );
      first = after.from;
      const comes = span.first > 0 && change.before < span.first + COMING;
      const goes = next === undefined && span.last < voltage.rms.length - 1 && last - change.before < LEVEL;
      return { from: change.before + 1, last, before, after, isBreak: comes || goes };
    });
  });
  return { moves, scatter };
}

/** The values whose cycles lie wholly between stretches without voltage. */
export function litSpans({ from, to }: HalfCycleRms, dark: readonly SampleRange[]): readonly ValueSpan[] {
  const spans: ValueSpan[] = [];
  let open: number | null = null;
  for (let k = 0; k <= from.length; k++) {
    const isLit = k < from.length && !dark.some((away) => away.from < to[k]! && away.to > from[k]!);
    if (isLit && open === null) open = k;
    if (!isLit && open !== null) {
      spans.push({ first: open, last: k - 1 });
      open = null;
    }
  }
  return spans;
}

/** False for a current channel that holds noise and no more. */
export function isCurrent({ rms }: HalfCycleRms, noise: number): boolean {
  return rms.some((amperes) => amperes > CURRENT_OVER_NOISE * noise);
}

/** The last value by which what moves fast has begun to. */
const begunBy = ({ before, last, levelFrom }: Change): number => levelFrom ?? Math.min(last, before + LEVEL);

/** The voltage's changes and those of the current that it doesn't show, in time order. */
function withCurrent(found: readonly Change[], current: readonly Change[]): readonly Change[] {
  // One that has begun well before the voltage moves is another, though it goes on into that.
  const more = current.filter(
    (change) => !found.some(({ before, last }) => change.before <= last && before <= begunBy(change)),
  );
  return [...found, ...more].sort((a, b) => a.before - b.before);
}

/** The changes of the current, by the indices of the voltage's values. */
function ofCurrent(
  voltage: HalfCycleRms,
  current: HalfCycleRms,
  { dark, currentNoise }: Pick<CandidateOptions, 'dark' | 'currentNoise'>,
): readonly Change[] {
  if (!isCurrent(current, currentNoise)) return [];
  const largest = current.rms.reduce((a, b) => Math.max(a, b), 0);
  const indexAt = (timeS: number): number => {
    const index = voltage.timeS.findIndex((time) => time >= timeS);
    return index < 0 ? voltage.timeS.length - 1 : index;
  };
  const least = CURRENT_STEP_RATIO * largest;
  return changes(current.rms, { least, spans: litSpans(current, dark) }).changes.map(
    ({ before, last, levelFrom }) => ({
      before: indexAt(current.timeS[before]!),
      last: indexAt(current.timeS[last]!),
      ...(levelFrom === undefined ? {} : { levelFrom: indexAt(current.timeS[levelFrom]!) }),
    }),
  );
}

/** The end of a stretch of an envelope that stays at one level. */
interface SettledStretch {
  /** First index that belongs to it. */
  readonly from: number;
  /** Last index, that of the stretch itself. */
  readonly last: number;
  readonly mean: number;
  /** False where it still moves at the end, or is too short to say: `mean` is then of the last values. */
  readonly settled: boolean;
}

/** Values that a level is told from, at least and at most: two cycles, and a second at 50 Hz. */
const LEAST_VALUES = 4;
const MOST = 100;

/**
 * The settled end of values[from … last]: back from the end, as long as they stay within a band around what
 * the last quarter of them comes to.
 *
 * @param values - shape N, one each half cycle. Not changed.
 * @param band - half-width, in the unit of the values, > 0.
 * @param least - values that it needs; fewer than LEAST_VALUES only where the values begin behind a sharp edge.
 */
export function settledStretch(
  values: Float64Array,
  from: number,
  last: number,
  band: number,
  least: number = LEAST_VALUES,
): SettledStretch {
  const length = last + 1 - from;
  const tail = Math.min(length, MOST, Math.max(least, Math.ceil(length / 4)));
  const level = mean(values, last + 1 - tail, last);
  let start = last + 1;
  while (start > from && Math.abs(values[start - 1]! - level) <= band) start--;
  if (last + 1 - start < Math.min(least, length)) {
    return { from: last + 1 - tail, last, mean: level, settled: false };
  }
  // Two halves of the tail at different levels: it still creeps.
  const half = tail >> 1;
  const creep =
    half === 0 ? 0 : mean(values, last + 1 - half, last) - mean(values, last + 1 - tail, last - half);
  const stretch = Math.max(start, last + 1 - MOST);
  return { from: start, last, mean: mean(values, stretch, last), settled: Math.abs(creep) <= band };
}

function mean(values: Float64Array, from: number, last: number): number {
  let sum = 0;
  for (let k = from; k <= last; k++) sum += values[k]!;
  return sum / (last + 1 - from);
}
