import { expect, test } from 'vitest';
import { timeText, timeUnit } from '../../../src/page/wave/waveColumns.ts';

test.each([
  [5, 's', 3],
  [2, 's', 3],
  [1.9, 'ms', 0],
  [0.04, 'ms', 2],
  [2e-3, 'ms', 3],
  [1.9e-3, 'µs', 0],
  [8e-7, 'µs', 4],
])('timeUnit(%d) is in %s with %d decimals', (spanS, name, decimals) => {
  expect(timeUnit(spanS)).toMatchObject({ name, decimals });
});

test('times a thousandth of the stretch apart read differently', () => {
  for (let spanS = 1e-7; spanS < 1e4; spanS *= 1.7) {
    const unit = timeUnit(spanS);
    expect(timeText(0.3 * spanS, unit)).not.toBe(timeText(0.301 * spanS, unit));
  }
});

test('a negative time bears the true minus sign', () => {
  expect(timeText(-0.0123, timeUnit(0.04))).toBe('−12.30\u00a0ms');
});
