import { expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { errorWords } from '../../../src/words/errors/errorWords.ts';
import { fieldOf, flagOf, type OptionName } from '../../../src/words/optionNames.ts';
import { failureLine } from '../../../src/words/rankNotices.ts';
import { examples } from './examples.ts';

const failures = Object.entries(examples).flatMap(([problem, cases]) =>
  (cases as readonly object[]).map((facts) => new MeasureError(problem, facts)),
);

function line(error: MeasureError, option: OptionName): string {
  return failureLine({ file: 'a.csv', error: errorWords(error, option) });
}

/** Each line in that file was read aloud: what changes there is to be read again. */
test('every error is said as it was agreed upon, and on the page with the names of its fields', async () => {
  const said = failures.map((error) => {
    const [terminal, page] = [line(error, flagOf), line(error, fieldOf)];
    return [error.problem, terminal, ...(page === terminal ? [] : [`on the page: ${page}`])].join('\n  ');
  });
  await expect(`${said.join('\n')}\n`).toMatchFileSnapshot('sentences.txt');
});

test.each(failures.map((error) => [error.problem, error] as const))(
  '%s: what is wrong is a sentence; no flag is named to who has none',
  (_, error) => {
    const { message, expected, received, advice } = errorWords(error);
    expect(message).toMatch(/^\S.*\.$/s);
    // They follow on "expected", "found", and the advice gets its own capital and full stop.
    for (const part of [expected, received]) expect(part ?? 'x').not.toMatch(/\.$|undefined|NaN/);
    expect(advice ?? 'x').not.toMatch(/undefined|NaN/);
    expect(line(error, fieldOf)).not.toMatch(/ --\w(?!.*of the command line)/);
  },
);

test('a place is said; of several channels the one that it is about, once', () => {
  const few = new MeasureError('rows.few', { rows: 1, least: 16 }, { line: 2, column: 3, channel: 'CH2' });
  expect(errorWords(few)).toMatchObject({
    message: 'CH2: The file holds only 1 row of numbers.',
    line: 2,
    column: 3,
  });
  const none = new MeasureError('channel.unmeasurable', { channel: 'CH2', unit: 'W' }, { channel: 'CH2' });
  expect(errorWords(none).message).toBe('CH2 carries neither volts nor amperes.');
});
