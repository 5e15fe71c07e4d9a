import * as v from 'valibot';
import type { Figure, MeasuredFigure } from './figure.ts';
import type { MeasureError } from './measureError.ts';
import type { Notice } from './notice.ts';

/** What a value from outside must look like to be a `T`. */
export type Schema<T> = v.GenericSchema<unknown, T>;

/** A part of a value that is not as its schema says. */
export interface Misfit {
  /** Keys and indices from the top; empty: the value itself. */
  readonly path: readonly (string | number)[];
  /** The same as a text: `result.voltage.rmsV`; empty: the value itself. */
  readonly place: string;
  /** What stands there. */
  readonly value: unknown;
  /** `unknown key`: nothing may stand there; `missing key`: something must. */
  readonly fault: 'unknown key' | 'missing key' | 'value';
  /** The message of the schema that it doesn't fit. */
  readonly says: string;
}

/**
 * The door for all that comes from outside: a value that is as the schema says goes through, as it came.
 *
 * @param refusal - the error for the first part that isn't.
 * @returns the value itself, never the schema's copy of it: that may lack keys and has them in another order, so that
 * its digest would be another one.
 * @remarks The time grows with the size of the value alone.
 */
export function admit<T>(value: unknown, schema: Schema<T>, refusal: (misfit: Misfit) => MeasureError): T {
  const { issues } = v.safeParse(schema, value, { abortEarly: true });
  if (issues === undefined) return value as T;
  throw refusal(misfitOf(issues[0], value));
}

/** The same of what a person wrote: of all that is wrong, a key misspelt before what it leaves missing. */
export function admitWritten<T>(
  value: unknown,
  schema: Schema<T>,
  refusal: (misfit: Misfit) => MeasureError,
): T {
  const { issues } = v.safeParse(schema, value);
  if (issues === undefined) return value as T;
  const found = issues.map((issue) => misfitOf(issue, value));
  throw refusal(found.find(({ fault }) => fault === 'unknown key') ?? found[0]!);
}

/** What a schema makes of a value: the parts that have a fallback may be wrong. */
export function admitPartly<T>(
  value: unknown,
  schema: Schema<T>,
  refusal: (misfit: Misfit) => MeasureError,
): T {
  const { issues, output } = v.safeParse(schema, value, { abortEarly: true });
  if (issues === undefined) return output as T;
  throw refusal(misfitOf(issues[0], value));
}

type Issue = v.BaseIssue<unknown>;

function misfitOf(issue: Issue, whole: unknown): Misfit {
  const { path, message, expected } = deepest(issue);
  const keys = path.map(({ key }) => (typeof key === 'number' ? key : String(key)));
  const last = path.at(-1);
  const isOfKey = last !== undefined && 'origin' in last && last.origin === 'key';
  return {
    ...{ path: keys, place: keys.join('.'), value: last === undefined ? whole : last.value },
    fault: !isOfKey ? 'value' : isOfUnknown({ expected }) ? 'unknown key' : 'missing key',
    says: message,
  };
}

/** Of what may be one thing or another, it is taken for the one that it is like the farthest. */
function deepest({ path, message, expected, issues }: Issue): DeepestIssue {
  const own: readonly v.IssuePathItem[] = path ?? [];
  const [inner] = (issues ?? [])
    .map(deepest)
    .sort((a, b) => b.path.length - a.path.length || Number(isOfUnknown(b)) - Number(isOfUnknown(a)));
  return inner === undefined || inner.path.length === 0
    ? { path: own, message, expected }
    : { ...inner, path: [...own, ...inner.path] };
}

function isOfUnknown({ expected }: Pick<Issue, 'expected'>): boolean {
  return expected === 'never';
}

interface DeepestIssue extends Pick<Issue, 'message' | 'expected'> {
  readonly path: readonly v.IssuePathItem[];
}

/** Longer than anybody writes, short enough to be set in lines. */
export const longestText = 20_000;

/** Any text up to a length. */
export function text(most: number = longestText): Schema<string> {
  return v.pipe(v.string(), v.maxLength(most));
}

/** JSON may hold numbers that are not finite (`1e999`). */
export const finite: Schema<number> = v.pipe(v.number(), v.finite());

/** Zero or more. */
export const size: Schema<number> = v.pipe(v.number(), v.finite(), v.minValue(0));

/** A whole number, zero or more. */
export const count: Schema<number> = v.pipe(v.number(), v.integer(), v.minValue(0));

/** A SHA-256, lower-case hexadecimal. */
export const digest: Schema<string> = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/));

/** A list of parts of one shape, of no more than anybody could look through. */
export function list<T>(part: Schema<T>, most: number = 10_000): Schema<T[]> {
  return v.pipe(v.array(part), v.maxLength(most));
}

/** Start and end, or least and most. */
export const pair: Schema<[number, number]> = v.strictTuple([finite, finite]);

/** Several keys of one shape. */
export function alike<const K extends string, T>(
  keys: readonly K[],
  part: Schema<T>,
): { readonly [Key in K]: Schema<T> } {
  return Object.fromEntries(keys.map((key) => [key, part])) as { readonly [Key in K]: Schema<T> };
}

/** Keys that may be absent. */
export function optional<T extends Readonly<Record<string, Schema<unknown>>>>(
  entries: T,
): { readonly [Key in keyof T]: v.ExactOptionalSchema<T[Key], undefined> } {
  const optionals = Object.entries(entries).map(([key, schema]) => [key, v.exactOptional(schema)]);
  return Object.fromEntries(optionals) as {
    readonly [Key in keyof T]: v.ExactOptionalSchema<T[Key], undefined>;
  };
}

/** To valibot a list is an object with the keys 0, 1, and so on; here it is none. */
export function noList<T>(schema: Schema<T>, says: string): Schema<T> {
  const refused = v.never(says);
  return {
    ...schema,
    '~run': (dataset, config) =>
      (Array.isArray(dataset.value) ? refused : schema)['~run'](dataset as never, config) as never,
  };
}

const measured = v.looseObject({ value: finite, uncertainty: size, ...optional({ notAbove: finite }) });

export const measuredFigure: Schema<MeasuredFigure> = measured;

/** A number with its uncertainty, or why there is none. */
export const figure: Schema<Figure<string>> = v.variant('value', [
  measured,
  v.looseObject({ value: v.null(), reason: text() }),
]);

export const notice: Schema<Notice> = v.looseObject({ code: text(), message: text() });
