import type { MeasuredFigure } from '../../base/figure.ts';
import { errorData, MeasureError, makeError } from '../../base/measureError.ts';
import { type BenchErrors, benchError, type PlanProblem } from '../benchErrors.ts';
import type { ToldLoad } from '../sweep/benchPoint.ts';
import type { Word } from './planSchema.ts';

export type Path = readonly (string | number)[];

/** Where a part of a plan stands, and how it is written there; undefined where the plan was not read from lines. */
export interface PlanSource {
  lineOf(path: Path): number | undefined;
  writtenAt(path: Path): string | undefined;
}

/** A part of a plan as its schema has it, and what to say where what it says is not right. */
export interface PlanPart<T> {
  readonly data: T;
  /** The word or number as it is written (`1.10`, `007`); undefined where that is not known. */
  readonly written: string | undefined;
  /** The part under a key or index; its data is undefined where there is none. */
  at<K extends keyof NonNullable<T> & (string | number)>(key: K): PlanPart<NonNullable<T>[K]>;
  /** True where nothing stands there. */
  readonly isAbsent: boolean;
  /** The error for this part; what stands there and its line need not be told. */
  wrong<Problem extends PlanProblem>(
    problem: Problem,
    facts: Omit<BenchErrors[Problem], 'found'>,
  ): MeasureError;
}

/** The whole of a plan as a part. */
export function planPart<T>(data: T, source: PlanSource, path: Path = []): PlanPart<T> {
  return {
    data,
    written: source.writtenAt(path),
    isAbsent: data === undefined || data === null,
    at(key) {
      type Child = NonNullable<T>[typeof key];
      const child = (typeof data === 'object' && data !== null ? data[key as never] : undefined) as Child;
      // What is missing is missed where it should stand: in this part.
      return planPart(child, source, child === undefined ? path : [...path, key]);
    },
    wrong(problem, facts) {
      const line = source.lineOf(path);
      return makeError(problem, { ...facts, found: shown(data) }, line === undefined ? {} : { line });
    },
  };
}

function shown(data: unknown): string | null {
  if (data === undefined || data === null) return null;
  const text = typeof data === 'string' ? `"${data}"` : (JSON.stringify(data) ?? typeof data);
  const signs = [...text];
  return signs.length > 60 ? `${signs.slice(0, 59).join('')}…` : text;
}

type Maybe<T> = T | null | undefined;

/** The parts of a list; none where it is absent. */
export function parts<T>(part: PlanPart<Maybe<readonly T[]>>): readonly PlanPart<T>[] {
  return (part.data ?? []).map((_, i) => part.at(i) as PlanPart<T>);
}

/** A text; a number, true or false counts as it is written. */
export function text({ data, written }: PlanPart<Word>): string {
  return (typeof data === 'string' ? data : (written ?? String(data))).trim();
}

/** The same, where it may be absent. */
export function optionalText(part: PlanPart<Maybe<Word>>): string | undefined {
  return part.isAbsent ? undefined : text(part as PlanPart<Word>);
}

/** What a grammar of its own makes of a word; its complaint gains the place in the plan. */
export function parsed<T>(part: PlanPart<Word>, example: string, parse: (words: string) => T): T {
  // A number as it is meant, not as it is written: 3e2 W.
  const words = typeof part.data === 'number' ? String(part.data) : text(part);
  try {
    return parse(words);
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    throw part.wrong('plan.schema.refused', { cause: errorData(error), example });
  }
}

/** The same, where it may be absent: null. */
export function optionallyParsed<T>(
  part: PlanPart<Maybe<Word>>,
  example: string,
  parse: (words: string) => T,
): T | null {
  return part.isAbsent ? null : parsed(part as PlanPart<Word>, example, parse);
}

const STATE = /^(\d+(?:[.,]\d+)?) ?(%|V)(?: ?DC)?$/i;

/**
 * The state of a battery: `80 %` charged, or `12.6 V` at its terminals.
 *
 * @throws MeasureError `battery.grammar`.
 */
export function parseBattery(text: string): NonNullable<ToldLoad['battery']> {
  const [, digits = '', unit = ''] = STATE.exec(text.trim()) ?? [];
  const value = Number(digits.replace(',', '.'));
  if (unit === '' || (unit === '%' && value > 100)) {
    throw benchError('battery.grammar', { text });
  }
  return unit === '%' ? { percent: value } : { directV: value };
}

const ENERGY = /^(\d+(?:[.,]\d+)?) ?(?:Wh)?(?: ?(?:±|\+\/?-) ?(\d+(?:[.,]\d+)?) ?(%|Wh)?)?$/i;

/**
 * An energy in Wh as a meter counted it: `466`, `466 Wh`, `466 ± 5`, `466 Wh ± 2 %`.
 *
 * @returns without a tolerance: as exact, for nobody said better.
 * @throws MeasureError `energy.grammar`, also for nothing.
 */
export function parseEnergy(text: string): MeasuredFigure {
  const [, digits = '', tolerance, unit] = ENERGY.exec(text.trim()) ?? [];
  const value = Number(digits.replace(',', '.'));
  if (!(value > 0)) {
    throw benchError('energy.grammar', { text });
  }
  const half = Number(tolerance?.replace(',', '.') ?? 0);
  return { value, uncertainty: unit === '%' ? (value * half) / 100 : half };
}
