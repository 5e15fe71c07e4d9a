import type { Course } from './course.ts';
import { type Cycling, cyclesIn } from './cycles.ts';
import { holesIn } from './holes.ts';
import { rowStates } from './rowStates.ts';

export type RunKind = 'discharge' | 'charge' | 'idle' | 'off' | 'cycling';

/** A stretch of a log in which one thing happens. */
export interface Run {
  readonly kind: RunKind;
  /** Rows of the course, both within. */
  readonly first: number;
  readonly last: number;
  /** Holes inside that are short beside what was seen, and counted. */
  readonly holes: readonly number[];
  /** Of one that cycles: the rows at which it rose. */
  readonly rises?: readonly number[];
}

interface Cut {
  /** In the order of the log. */
  readonly runs: readonly Run[];
  /** All holes: i for the interval from row i to row i + 1. */
  readonly holes: readonly number[];
}

/** A pause of fewer rows splits nothing. */
const LEAST_PAUSE_ROWS = 3;

/**
 * What happens in a log, from its first row to its last.
 *
 * A hole ends a run, but where the same goes on behind it and it is shorter than what was seen of that.
 *
 * @param ratedWh - what the unit is rated at; absent: not told.
 */
export function runsOf(course: Course, ratedWh?: number): Cut {
  const holes = holesIn(course);
  const cycling = cyclesIn(course, holes);
  const pieces = piecesOf(course, ratedWh, holes, cycling);
  return { runs: joined(withoutPauses(pieces), course), holes };
}

interface Piece extends Run {
  /** A hole, or the end of a part, lies before it. */
  readonly cut: 'hole' | 'part' | null;
}

function piecesOf(
  course: Course,
  ratedWh: number | undefined,
  holes: readonly number[],
  cycling: readonly Cycling[],
): readonly Piece[] {
  const states = rowStates(course, ratedWh);
  const cuts = new Map<number, Piece['cut']>([
    ...holes.map((at): [number, Piece['cut']] => [at + 1, 'hole']),
    ...course.partStarts.map((at): [number, Piece['cut']] => [at, 'part']),
  ]);
  const pieces: Piece[] = [];
  let next = 0;
  for (let first = 0; first < states.length; ) {
    const cycle = cycling[next];
    let last = first;
    if (cycle !== undefined && first === cycle.first) {
      last = cycle.last;
      next++;
      pieces.push({
        kind: 'cycling',
        first,
        last,
        holes: [],
        rises: cycle.rises,
        cut: cuts.get(first) ?? null,
      });
    } else {
      while (
        last + 1 < states.length &&
        states[last + 1] === states[first] &&
        !cuts.has(last + 1) &&
        last + 1 !== cycle?.first
      )
        last++;
      pieces.push({ kind: states[first]!, first, last, holes: [], cut: cuts.get(first) ?? null });
    }
    first = last + 1;
  }
  return pieces;
}

function isLoaded({ kind }: Pick<Run, 'kind'>): boolean {
  return kind !== 'off' && kind !== 'idle';
}

/** Pauses of a row or two vanish into what they interrupt, or into the load beside them; alone they are no run. */
function withoutPauses(pieces: readonly Piece[]): readonly Piece[] {
  const kept: Piece[] = [];
  pieces.forEach((piece, i) => {
    const before = kept.at(-1);
    const isBrief = !isLoaded(piece) && rowsOf(piece) < LEAST_PAUSE_ROWS;
    const isNext = piece.cut === null && before !== undefined && before.last === piece.first - 1;
    const after = pieces[i + 1]?.cut === null ? pieces[i + 1] : undefined;
    if (isNext && before.kind === piece.kind && piece.kind !== 'cycling') {
      kept[kept.length - 1] = { ...before, last: piece.last };
    } else if (isBrief && isNext && after !== undefined && after.kind === before.kind && isLoaded(before)) {
      kept[kept.length - 1] = { ...before, last: piece.last };
    } else if (isBrief && piece.kind === 'idle' && isNext && isLoaded(before)) {
      kept[kept.length - 1] = { ...before, last: piece.last };
    } else if (isNext && isLoaded(piece) && before.kind === 'idle' && rowsOf(before) < LEAST_PAUSE_ROWS) {
      kept[kept.length - 1] = { ...piece, first: before.first, cut: before.cut };
    } else if (!isBrief || piece.kind === 'idle' || pieces.length === 1) kept.push(piece);
  });
  return kept;
}

function rowsOf({ first, last }: Piece): number {
  return last - first + 1;
}

/** The same on both sides of a hole that is shorter than what was seen of it is one run. */
function joined(pieces: readonly Piece[], { timesS, from, load }: Course): readonly Run[] {
  const spanS = ({ first, last }: Run): number => timesS[last]! - timesS[first]!;
  const runs: (Run & { readonly seenS: number })[] = [];
  for (const { cut, ...piece } of pieces) {
    const before = runs.at(-1);
    const seenS = spanS(piece) + (before?.seenS ?? 0);
    const holeS = before === undefined ? 0 : timesS[piece.first]! - timesS[before.last]!;
    const isOn = cut === 'hole' && before?.kind === piece.kind && before.last === piece.first - 1;
    // A gauge that went the other way in between was charged, or emptied, unseen.
    const isGaugeAgainst =
      from === 'counter' && (piece.kind === 'charge' ? load[piece.first]! > 0 : load[piece.first]! < 0);
    if (isOn && before !== undefined && !isGaugeAgainst && piece.kind !== 'cycling' && holeS < seenS) {
      const holes = [...before.holes, before.last];
      runs[runs.length - 1] = { ...before, last: piece.last, holes, seenS };
    } else runs.push({ ...piece, seenS: spanS(piece) });
  }
  return runs.map(({ seenS, ...run }) => run);
}
