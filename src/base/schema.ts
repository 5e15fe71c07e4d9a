import * as v from 'valibot';
import type { Figure, MeasuredFigure } from './figure.ts';
import type { MeasureError } from './measureError.ts';
import type { Notice } from './notice.ts';

/** What a value from outside must look like to be a `T`. */
export type Schema<T> = v.GenericSchema<unknown, T>;

/** The first part of a value that is not as its schema says. */
export interface Misfit {
  /** Keys and indices from the top; empty: the value itself. */
  readonly path: readonly (string | number)[];
  /** The same as a text: `result.voltage.rmsV`; empty: the value itself. */
  readonly place: string;
  /** What stands there. */
  readonly value: unknown;
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
  const parts = issues[0].path ?? [];
  const path = parts.map(({ key }) => (typeof key === 'number' ? key : String(key)));
  throw refusal({ path, place: path.join('.'), value: parts.length === 0 ? value : parts.at(-1)!.value });
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

const measured = v.looseObject({ value: finite, uncertainty: size, ...optional({ notAbove: finite }) });

export const measuredFigure: Schema<MeasuredFigure> = measured;

/** A number with its uncertainty, or why there is none. */
export const figure: Schema<Figure> = v.variant('value', [
  measured,
  v.looseObject({ value: v.null(), reason: text() }),
]);

export const notice: Schema<Notice> = v.looseObject({ code: text(), message: text() });
