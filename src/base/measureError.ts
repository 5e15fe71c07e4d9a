/** What is known of a problem, by name: numbers, names and texts as they came, none of them a sentence of ours. */
type Facts = object;

/** Where it was met, as far as there is such a place. */
export interface ErrorPlace {
  /** 1-based line of the file. */
  readonly line?: number;
  /** 1-based column (cell) of that line. */
  readonly column?: number;
  /** Of several channels asked for, the one that it keeps from being measured. */
  readonly channel?: string;
}

/**
 * An input that can't be read or measured, as data: which problem, what is known of it, and where. Each room says in
 * a table of types which facts its problems have; `errorWords` makes the sentences, in each door's own words.
 *
 * `message` is for programmers: the problem and its facts in a line.
 *
 * @remarks A doubtful figure is not an error: it carries a Notice. A programmer's mistake is a
 * RangeError or TypeError.
 */
export class MeasureError extends Error {
  override readonly name = 'MeasureError';
  /** Dotted: the code, and where one code has several sentences, a word more: `file.empty`, `file.empty.blank`. */
  readonly problem: string;
  readonly facts: Facts;
  readonly place: ErrorPlace;

  /** @remarks Rooms make theirs with an `ErrorMaker`, which holds facts against the room's table. */
  constructor(problem: string, facts: Facts, place: ErrorPlace = {}) {
    super(
      'message' in facts ? String(facts.message) : `${problem} ${JSON.stringify({ ...facts, ...place })}`,
    );
    this.problem = problem;
    this.facts = facts;
    this.place = place;
  }

  /** Stable, dotted: `topic.problem`, for example `file.empty`. */
  get code(): string {
    return this.problem.split('.', 2).join('.');
  }

  /** Of a room whose sentences still stand where they are thrown. */
  get detail(): Partial<Wording> & ErrorPlace {
    return { ...(this.facts as Partial<Wording>), ...this.place };
  }
}

/** What goes from one thread to another, for a `MeasureError` to be made of again. */
export type ErrorData = Pick<MeasureError, 'problem' | 'facts' | 'place'>;

export function errorData({ problem, facts, place }: MeasureError): ErrorData {
  return { problem, facts, place };
}

export function errorOf({ problem, facts, place }: ErrorData): MeasureError {
  return new MeasureError(problem, facts, place);
}

/** Makes the errors of a room: `Errors` has the facts of each of its problems. */
export type ErrorMaker<Errors> = <Problem extends keyof Errors & string>(
  problem: Problem,
  facts: Errors[Problem],
  place?: ErrorPlace,
) => MeasureError;

/** @example const readError: ErrorMaker<ReadErrors> = makeError; throw readError('file.binary', { controlShare }) */
export function makeError(problem: string, facts: Facts, place?: ErrorPlace): MeasureError {
  return new MeasureError(problem, facts, place);
}

/** What an error says that brings its own sentences. */
export interface Wording {
  /** One sentence that says what is wrong. */
  readonly message: string;
  /** What was expected there. */
  readonly expected?: string;
  /** What was found instead, in words or as the (shortened) text itself. */
  readonly received?: string;
  /** What to do, as an instruction to a person at a bench. */
  readonly advice?: string;
}

/** An error of a room whose sentences still stand where it is thrown. */
export function wordedError(
  code: string,
  message: string,
  { line, column, ...words }: Omit<Wording, 'message'> & ErrorPlace = {},
): MeasureError {
  const place = { ...(line === undefined ? {} : { line }), ...(column === undefined ? {} : { column }) };
  return new MeasureError(code, { message, ...words }, place);
}
