import { expect, test } from 'vitest';
import { flagName, flags } from '../../../src/assay/options/optionLists.ts';
import { MeasureError } from '../../../src/base/measureError.ts';
import { outletQuantities } from '../../../src/judge/claims/claimedQuantities.ts';
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
    // But in a command to type, and where the page has no such field.
    const onPage = line(error, fieldOf)
      .replace(/sineassay bench .*/, '')
      .replace(/--\S+ of the command line/, '');
    for (const flag of flags) expect(onPage).not.toContain(`${flagName(flag)} `);
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

test('who writes a claim that can’t be understood is shown one of each quantity', () => {
  const { advice } = errorWords(new MeasureError('claim.grammar', { text: 'nice', lacks: 'value' }));
  for (const { examples: written } of Object.values(outletQuantities))
    for (const example of written) expect(advice).toContain(example);
});
