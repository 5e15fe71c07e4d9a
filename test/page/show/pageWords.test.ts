import { expect, test } from 'vitest';
import { pageWords } from '../../../src/page/show/pageWords.ts';

test('pageWords(text) names the field in place of the command’s option', () => {
  expect(pageWords('Give --nominal 230V/50Hz.')).toBe('Give “Nominal” 230V/50Hz.');
  expect(pageWords('the rate (--sample-rate)')).toBe('the rate (“Samples a second”)');
  expect(pageWords('an em -- dash and --unknown-word stay')).toBe('an em -- dash and --unknown-word stay');
});
