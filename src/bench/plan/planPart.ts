import { MeasureError } from '../../base/measureError.ts';

type Path = readonly (string | number)[];

/** Where a part of a plan stands; undefined where the plan was not read from lines. */
export type LineOf = (path: Path) => number | undefined;

/** A part of a plan, and what to say where it isn't what it should be. */
export interface PlanPart {
  readonly data: unknown;
  /** The part under a key or index; its data is undefined where there is none. */
  at(key: string | number): PlanPart;
  /** True where nothing stands there. */
  readonly isAbsent: boolean;
  /**
   * The error for this part.
   *
   * @param message - one sentence without the place.
   * @param expected - what should stand there, in words.
   */
  wrong(message: string, expected: string, advice?: string): MeasureError;
}

/** The whole of a plan as a part. */
export function planPart(data: unknown, lineOf: LineOf, path: Path = []): PlanPart {
  return {
    data,
    isAbsent: data === undefined || data === null,
    at(key) {
      const child =
        typeof data === 'object' && data !== null
          ? (data as Readonly<Record<string | number, unknown>>)[key]
          : undefined;
      // What is missing is missed where it should stand: in this part.
      return planPart(child, lineOf, child === undefined ? path : [...path, key]);
    },
    wrong(message, expected, advice) {
      const line = lineOf(path);
      return new MeasureError('plan.schema', message, {
        ...(line === undefined ? {} : { line }),
        expected,
        received: received(data),
        ...(advice === undefined ? {} : { advice }),
      });
    },
  };
}

function received(data: unknown): string {
  if (data === undefined || data === null) return 'nothing';
  const text = typeof data === 'string' ? `"${data}"` : (JSON.stringify(data) ?? typeof data);
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}
