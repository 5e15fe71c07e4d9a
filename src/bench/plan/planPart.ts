import type { MeasuredFigure } from '../../base/figure.ts';
import { MeasureError } from '../../base/measureError.ts';
import type { ToldLoad } from '../sweep/benchPoint.ts';

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

/**
 * Checks that a part is a mapping with known keys only: a key misspelt would go unheard otherwise.
 *
 * @param what - for the message: `a unit`.
 * @throws MeasureError `plan.schema`, on the line of the first key that is not known.
 */
export function mapping(part: PlanPart, what: string, keys: readonly string[]): PlanPart {
  const expected = `the keys ${keys.join(', ')}`;
  const { data } = part;
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    throw part.wrong(`This is not ${what}.`, expected);
  for (const key of Object.keys(data)) {
    if (!keys.includes(key)) {
      throw part.at(key).wrong(`The key "${key}" is not known in ${what}.`, expected, 'check the spelling');
    }
  }
  return part;
}

/** The parts of a list; none where it is absent. */
export function list(part: PlanPart, what: string): readonly PlanPart[] {
  if (part.isAbsent) return [];
  if (!Array.isArray(part.data)) throw part.wrong(`${what} form a list.`, 'lines that start with "- "');
  return part.data.map((_, i) => part.at(i));
}

/** A text that is not empty; a number, true or false counts as it is written. */
export function text(part: PlanPart, what: string, example: string): string {
  const { data } = part;
  const isWord = typeof data === 'number' || typeof data === 'boolean';
  const value = isWord ? (part.written ?? String(data)) : data;
  const isMissing = part.isAbsent || value === '';
  if (typeof value !== 'string' || value.trim() === '')
    throw part.wrong(isMissing ? `${what} is missing.` : `${what} is no text.`, `a text such as ${example}`);
  return value.trim();
}

/** The same, where it may be absent. */
export function optionalText(part: PlanPart, what: string, example: string): string | undefined {
  return part.isAbsent ? undefined : text(part, what, example);
}

/** What a grammar of its own makes of a part's text; its complaint gains the place in the plan. */
export function parsed<T>(part: PlanPart, what: string, example: string, parse: (words: string) => T): T {
  // A number as it is meant, not as it is written: 3e2 W.
  const words = typeof part.data === 'number' ? String(part.data) : text(part, what, example);
  try {
    return parse(words);
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    throw part.wrong(
      error.message,
      error.detail.expected ?? `a text such as ${example}`,
      error.detail.advice,
    );
  }
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
    throw new MeasureError('battery.grammar', `"${text}" is no state of a battery.`, {
      expected: 'a charge such as 80 %, or volts such as 12.6 V',
      received: text,
    });
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
    throw new MeasureError('energy.grammar', `"${text}" is no energy.`, {
      expected: 'watt-hours above zero, such as 466 or 466 ± 2 %',
      received: text,
    });
  }
  const half = Number(tolerance?.replace(',', '.') ?? 0);
  return { value, uncertainty: unit === '%' ? (value * half) / 100 : half };
}
