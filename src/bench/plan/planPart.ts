import { MeasureError } from '../../base/measureError.ts';

type Path = readonly (string | number)[];

/** Where a part of a plan stands, and how it is written there; undefined where the plan was not read from lines. */
export interface PlanSource {
  lineOf(path: Path): number | undefined;
  writtenAt(path: Path): string | undefined;
}

/** A part of a plan, and what to say where it isn't what it should be. */
export interface PlanPart {
  readonly data: unknown;
  /** The word or number as it is written (`1.10`, `007`); undefined where that is not known. */
  readonly written: string | undefined;
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
export function planPart(data: unknown, source: PlanSource, path: Path = []): PlanPart {
  return {
    data,
    written: source.writtenAt(path),
    isAbsent: data === undefined || data === null,
    at(key) {
      const child =
        typeof data === 'object' && data !== null
          ? (data as Readonly<Record<string | number, unknown>>)[key]
          : undefined;
      // What is missing is missed where it should stand: in this part.
      return planPart(child, source, child === undefined ? path : [...path, key]);
    },
    wrong(message, expected, advice) {
      const line = source.lineOf(path);
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
  const signs = [...text];
  return signs.length > 60 ? `${signs.slice(0, 59).join('')}…` : text;
}
