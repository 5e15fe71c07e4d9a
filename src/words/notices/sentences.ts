import type { OptionName } from '../optionNames.ts';

/** A sentence for each code of a list, made of its facts. */
export type SentencesOf<Codes> = {
  readonly [Code in keyof Codes]: string | ((facts: Readonly<Codes[Code]>, option: OptionName) => string);
};
