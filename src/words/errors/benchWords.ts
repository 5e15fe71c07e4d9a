import type { BenchErrors } from '../../bench/benchErrors.ts';
import type { ErrorWords } from './wording.ts';

export const benchWords: ErrorWords<BenchErrors> = {
  'plan.schema.refused': ({ cause, example, found }, _, inWords) => {
    const { message, expected = `a text such as ${example}`, advice } = inWords(cause);
    return { message, expected, received: found, ...(advice === undefined ? {} : { advice }) };
  },
};
