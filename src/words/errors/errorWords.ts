import type { AssayErrors } from '../../assay/assayErrors.ts';
import type { ErrorDocument } from '../../assay/measureDocument.ts';
import type { ErrorData, MeasureError, Wording } from '../../base/measureError.ts';
import type { BenchErrors } from '../../bench/benchErrors.ts';
import type { EnergyErrors } from '../../energy/energyErrors.ts';
import type { LogErrors } from '../../energy/log/logErrors.ts';
import type { JudgeErrors } from '../../judge/judgeErrors.ts';
import type { MeasureErrors } from '../../measure/measureErrors.ts';
import type { ReadErrors } from '../../read/readErrors.ts';
import { flagOf, type OptionName } from '../optionNames.ts';
import { benchWords } from './benchWords.ts';
import { energyWords } from './energyWords.ts';
import { logWords } from './logWords.ts';
import { measureWords } from './measureWords.ts';
import { readWords } from './readWords.ts';
import { toldWords } from './toldWords.ts';
import type { ErrorWords, WordsOf } from './wording.ts';

/** Each problem that an error of ours may be of, with its facts. */
export interface Errors
  extends ReadErrors,
    MeasureErrors,
    JudgeErrors,
    AssayErrors,
    EnergyErrors,
    LogErrors,
    BenchErrors {}

/** Its sentences. */
const words: ErrorWords<Errors> = {
  ...readWords,
  ...measureWords,
  ...toldWords,
  ...energyWords,
  ...logWords,
  ...benchWords,
};

/**
 * An error in words: what is wrong, what was expected and found, what to do.
 *
 * @param option - what the door calls an option that the sentences ask for.
 * @returns as documents carry it.
 */
export function errorWords(error: MeasureError, option: OptionName = flagOf): ErrorDocument {
  const { code, facts, place } = error;
  const { line, column, channel } = place;
  const { message, expected, received, advice } = wordingOf(error, option);
  const isNamed = channel === undefined || ('channel' in facts && facts.channel === channel);
  return {
    code,
    message: isNamed ? message : `${channel}: ${message}`,
    ...(line === undefined ? {} : { line }),
    ...(column === undefined ? {} : { column }),
    ...(expected === undefined ? {} : { expected }),
    ...(received === undefined ? {} : { received }),
    ...(advice === undefined ? {} : { advice }),
  };
}

/** What is wrong, and what to do: for somebody who knows what was asked and where. */
export function briefly(error: MeasureError, option?: OptionName): string {
  const { message, advice = '' } = errorWords(error, option);
  return `${message} ${advice}`.trim();
}

function wordingOf({ problem, facts }: ErrorData, option: OptionName): Wording {
  const own = (words as Partial<Record<string, WordsOf<never>>>)[problem];
  // Of a room whose sentences still stand where they are thrown.
  if (own === undefined) return facts as Wording;
  return own(facts as never, option, (cause) => wordingOf(cause, option));
}
