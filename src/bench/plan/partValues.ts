import { MeasureError } from '../../base/measureError.ts';
import type { PlanPart } from './planPart.ts';

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
