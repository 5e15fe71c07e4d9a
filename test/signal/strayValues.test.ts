import { expect, test } from 'vitest';
import { strayValues } from '../../src/signal/strayValues.ts';

/** Ten cycles of a sine of 325 at its peak, 5000 samples. */
function sine(): Float64Array {
  return Float64Array.from({ length: 5000 }, (_, n) => 325 * Math.sin((2 * Math.PI * n) / 500));
}

function withValues(...values: readonly (readonly [number, number])[]): Float64Array {
  const samples = sine();
  for (const [n, value] of values) samples[n] = value;
  return samples;
}

test('values farther off than the usual ones are apart, single and few, are stray', () => {
  expect(strayValues(sine())).toEqual([]);
  expect(strayValues(withValues([700, 1000]))).toEqual([700]);
  expect(strayValues(withValues([0, -1200], [700, 4000], [4999, 1e30]))).toEqual([0, 700, 4999]);
});

test('what is nearer is left to the fit', () => {
  // The usual values lie within 325 of zero: 650 from end to end.
  expect(strayValues(withValues([700, 960]))).toEqual([]);
});

test('values that stand together, or come every cycle, were really seen', () => {
  expect(strayValues(withValues([700, 2000], [702, -1500]))).toEqual([]);
  expect(strayValues(withValues([100, 1500], [600, 1500], [1100, 1500], [1600, 1500]))).toEqual([]);
});

test('up to two in a thousand are stray where no pulse would come', () => {
  const at = (...places: readonly number[]) => withValues(...places.map((n) => [n, 1500] as const));
  const anywhere = [100, 350, 1234, 1300, 2222, 3141, 3500, 4000, 4321, 4990];
  expect(strayValues(at(...anywhere))).toEqual(anywhere);
  expect(strayValues(at(...anywhere, 4995))).toEqual([]);
  // Two a cycle, the second closer behind the first than the first behind the second before it.
  expect(strayValues(at(100, 300, 600, 800, 1101, 1300, 1600, 1799))).toEqual([]);
});

test('values a hundred times as far off are stray wherever they stand, up to one in a hundred', () => {
  const many = Array.from({ length: 50 }, (_, i) => [2 * i, 1e6] as const);
  expect(strayValues(withValues(...many))).toEqual(many.map(([n]) => n));
  expect(strayValues(withValues(...many, [4000, 1e6]))).toEqual([]);
  // A burst that was seen stays, a value that can't have been does not.
  expect(strayValues(withValues([700, 2000], [702, -1500], [3000, -1e7]))).toEqual([3000]);
});

test('missing samples are none; a record at rest, or of few values, tells nothing', () => {
  expect(strayValues(withValues([5, Number.NaN], [700, 1e6]))).toEqual([700]);
  expect(strayValues(new Float64Array(5000).fill(12, 1).fill(500, 0, 1))).toEqual([]);
  expect(strayValues(Float64Array.of(1, 2, 1, 2, 1e9))).toEqual([]);
});

test('the last value before a wave breaks off beside its crest is no stray one', () => {
  // Half a cycle and a little more in a record at zero otherwise: the crest alone stands beyond what is usual.
  const samples = Float64Array.from({ length: 20_000 }, (_, n) => 0.3 * Math.sin(n));
  for (let n = 0; n < 400; n++) samples[5000 + n] = n < 300 ? -170 : n < 399 ? 168 : 172;
  expect(strayValues(samples)).toEqual([]);
  samples[5399] = 1500;
  expect(strayValues(samples)).toEqual([5399]);
});
