import type { ErrorData, Wording } from '../../base/measureError.ts';
import type { OptionName } from '../optionNames.ts';

export type { Wording };

/** The sentences of each problem of a room, made of its facts. */
export type ErrorWords<Errors> = {
  readonly [Problem in keyof Errors]: WordsOf<Errors[Problem]>;
};

/** @param inWords - of an error that is a fact of this one. */
export type WordsOf<Facts> = (
  facts: Facts,
  option: OptionName,
  inWords: (cause: ErrorData) => Wording,
) => Wording;

/** `1 row`, `12 rows`. */
export function counted(count: number, what: string): string {
  return `${count} ${count === 1 ? what : `${what}s`}`;
}
