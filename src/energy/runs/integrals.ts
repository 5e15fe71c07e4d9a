import type { Course } from './course.ts';
import { intervalHours, rowHours } from './rowHours.ts';
import type { Run } from './runs.ts';

/** What a run adds up to, and what its sums may be off by because rows are few, in unit hours. */
export interface Integral {
  /** Σ hours · value. */
  readonly sum: number;
  /** √Σ a² of what may lie between rows, each anywhere within ± a. */
  readonly betweenRows: number;
  /** The largest of them. */
  readonly largestBetween: number;
  /** Σ a: where all lie on the same side, because rows keep step with what they watch. */
  readonly betweenRowsTogether: number;
  /** Σ a of holes that are counted. */
  readonly holes: number;
}

/** The hours of each row of a run, and of all of them. */
export interface RunTime {
  readonly hours: Float64Array;
  readonly total: number;
}

export function runTime(course: Course, run: Run, holes: ReadonlySet<number>): RunTime {
  const hours = rowHours(course, run, holes);
  return { hours, total: hours.reduce((sum, one) => sum + one, 0) };
}

/**
 * The integral of a quantity over a run.
 *
 * Between two rows of an instantaneous log a change may come at once, anywhere: bounds Σ min … Σ max of the two
 * ends, their middle the trapezoid, half-width ½ |Δ| Δt. Where the run ends, the other end is nothing.
 *
 * @param values - shape N of the course, the run's own direction positive.
 */
export function integral(
  course: Course,
  run: Run,
  { hours }: RunTime,
  values: Float64Array,
  holes: ReadonlySet<number>,
): Integral {
  const { sampling } = course;
  const counted = new Set(run.holes);
  let sum = 0;
  for (let row = run.first; row <= run.last; row++) sum += hours[row - run.first]! * values[row]!;
  let [squares, largest, together, ofHoles] = [0, 0, 0, 0];
  for (let at = run.first - 1; at <= run.last; at++) {
    const isInner = at >= run.first && at < run.last;
    const [a, b] = [at >= run.first ? values[at]! : 0, at < run.last ? values[at + 1]! : 0];
    const half = 0.5 * Math.abs(b - a) * intervalHours(course, at);
    if (counted.has(at)) ofHoles += course.from === 'counter' ? 0 : half;
    else if (sampling === 'instantaneous' && (isInner || !holes.has(at))) {
      squares += half * half;
      largest = Math.max(largest, half);
      together += half;
    }
  }
  return {
    sum,
    betweenRows: Math.sqrt(squares),
    largestBetween: largest,
    betweenRowsTogether: together,
    holes: ofHoles,
  };
}

/**
 * Hours of readings that stand still together, √Σ (Σ hours · weight)²: what a step of the readings does to an
 * integral. Readings that stay on one step are off alike, and more of them don't help; those that wander are not.
 *
 * @param readings - shape N of the course.
 * @param weights - what one unit of a reading does to the quantity; absent: 1.
 */
export function standingHours(
  { first, last }: Run,
  { hours }: RunTime,
  readings: Float64Array,
  weights: Float64Array | null,
): { readonly root: number; readonly largest: number } {
  let [squares, largest, group] = [0, 0, 0];
  const close = (): void => {
    squares += group * group;
    largest = Math.max(largest, Math.abs(group));
    group = 0;
  };
  for (let row = first; row <= last; row++) {
    if (row > first && readings[row] !== readings[row - 1]) close();
    group += hours[row - first]! * (weights === null ? 1 : weights[row]!);
  }
  close();
  return { root: Math.sqrt(squares), largest };
}
