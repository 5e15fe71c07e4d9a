import { expect, test } from 'vitest';
import { markSentence } from '../../../src/page/wave/drawWave.ts';
import { timeUnit } from '../../../src/page/wave/waveColumns.ts';

const ms = timeUnit(0.04);
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

test('no mark, one mark: what to do', () => {
  expect(markSentence([], 'V', ms)).toMatch(/two places/);
  expect(plain(markSentence([{ timeS: 0.01, value: -3.14166 }], 'V', ms))).toBe(
    'One mark at 10.00 ms (−3.142 V); a second one is wanted.',
  );
});

test('two marks, in either order: time between, as hertz of one turn, and how the value changes', () => {
  const [a, b] = [
    { timeS: -0.01, value: -10 },
    { timeS: 0.01, value: 25.5 },
  ];
  const words =
    'From −10.00 ms (−10 V) to 10.00 ms (25.5 V): 20.00 ms, the time of one turn at 50 Hz, and 35.5 V higher.';
  expect(plain(markSentence([a, b], 'V', ms))).toBe(words);
  expect(plain(markSentence([b, a], 'V', ms))).toBe(words);
  expect(plain(markSentence([{ ...a, value: 30 }, b], 'V', ms))).toMatch(/and 4\.5 V lower\.$/);
  expect(plain(markSentence([{ ...a, value: 25.5 }, b], 'V', ms))).toMatch(/and the same value\.$/);
});

test('where the file holds no value, or both marks are one, nothing is made up', () => {
  expect(
    plain(
      markSentence(
        [
          { timeS: 0, value: null },
          { timeS: 0.02, value: 1 },
        ],
        'V',
        ms,
      ),
    ),
  ).toBe('From 0.00 ms to 20.00 ms (1 V): 20.00 ms, the time of one turn at 50 Hz.');
  expect(
    plain(
      markSentence(
        [
          { timeS: 0, value: 1 },
          { timeS: 0, value: 1 },
        ],
        'V',
        ms,
      ),
    ),
  ).not.toMatch(/Infinity|NaN|Hz/);
});
