import { expect, test } from 'vitest';
import { readCapture } from '../../../src/read/readCapture.ts';
import { rescaleCapture } from '../../../src/read/rescaleCapture.ts';

const rows = (text: (code: number) => string): string =>
  Array.from({ length: 200 }, (_, i) => `${i},${text(((i * 37) % 251) - 125)}`).join('\n');
const noticesOf = (file: string, scale?: number) => {
  const capture = readCapture(new TextEncoder().encode(file));
  const told = scale === undefined ? [] : [{ channel: 'CH1', factor: scale }];
  return rescaleCapture(capture, { scales: told, inverted: [], measured: undefined }).notices;
};

test('a factor per count that the head gives is proposed where a header calls whole numbers volts', () => {
  const file = `Sample interval,0.0001\nVolts per count,0.0048\nIndex,CH1 (V)\n${rows(String)}\n`;
  expect(noticesOf(file)).toContainEqual({
    ...{ code: 'scale.implied', channels: ['CH1'] },
    hints: [{ channel: 'CH1', factor: 0.0048, division: null }],
  });
  expect(noticesOf(file, 0.0048).some(({ code }) => code === 'scale.implied')).toBe(false);
});

test('a scale per division is proposed over the counts of a division on most scopes', () => {
  const file = `Sample interval,0.0001\nVertical scale,0.12\nIndex,CH1 (counts)\n${rows(String)}\n`;
  // 0.12 V over 25 counts.
  expect(noticesOf(file)).toContainEqual({
    ...{ code: 'counts.unscaled', channels: ['CH1'] },
    hints: [{ channel: 'CH1', factor: expect.closeTo(0.0048, 12), division: { volts: 0.12, counts: 25 } }],
  });
});

test('nothing is proposed for volts with decimals, whatever the head says', () => {
  const file = `Sample interval,0.0001\nVolts per count,0.0048\nIndex,CH1 (V)\n${rows((code) => (code / 8).toFixed(3))}\n`;
  expect(noticesOf(file).some(({ code }) => code === 'scale.implied')).toBe(false);
});
