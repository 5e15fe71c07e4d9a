import { expect, test } from 'vitest';
import { refuseTooLarge, refuseTooLargeText } from '../../../src/cli/reading/readFileCapture.ts';

const uses = ['stamps', 'kept', 'kept'] as const;

test('refuseTooLarge(plan, available) lets a file pass whose samples there is memory for', () => {
  // 8 bytes a row and channel are 160 MB.
  expect(() => refuseTooLarge({ uses, estimatedRows: 10e6 }, 500e6)).not.toThrow();
});

test('refuseTooLarge(plan, available) names the rows that there are, and those that there is room for', () => {
  expect(() => refuseTooLarge({ uses, estimatedRows: 20e6 }, 300e6)).toThrow(
    expect.objectContaining({
      code: 'file.tooLarge',
      detail: expect.objectContaining({
        // (300 MB − 160 MiB) / 16 B.
        expected: expect.stringMatching(/^at most 8\.26 million rows of 2 channels/),
        received: expect.stringMatching(/^about 20\.0 million rows/),
        advice: expect.stringContaining('shorter part'),
      }),
    }),
  );
});

test('refuseTooLargeText(byteLength, available) refuses what no text can hold', () => {
  expect(() => refuseTooLargeText(100e6, 500e6)).not.toThrow();
  expect(() => refuseTooLargeText(200e6, 500e6)).toThrow(expect.objectContaining({ code: 'file.tooLarge' }));
  expect(() => refuseTooLargeText(2e9, 1e12)).toThrow(expect.objectContaining({ code: 'file.tooLarge' }));
});
