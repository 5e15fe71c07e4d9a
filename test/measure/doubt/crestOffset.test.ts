import { expect, test } from 'vitest';
import { measureWave } from '../../../src/measure/measureWave.ts';
import { inputOf } from '../inputOf.ts';

const PER_CYCLE = 400;

/** Six cycles, seen with an offset and with the distortion of the scope in orders 3, 5 and 7, all of them at the middle. */
function seen(wave: (cycle: number) => number, offset: number, distortion: number): Float64Array {
  return Float64Array.from({ length: 6 * PER_CYCLE }, (_, n) => {
    const cycle = (n + 0.5) / PER_CYCLE;
    const own = [3, 5, 7].map((k, i) => (i % 2 === 0 ? -1 : 1) * Math.sin(2 * Math.PI * k * cycle));
    return 300 * (wave(cycle % 1) + offset + distortion * own.reduce((a, b) => a + b));
  });
}

/** A modified sine that is on for 80 % of each half cycle: crest factor 1/√0.8. */
const modified = (x: number): number => (Math.abs((x % 0.5) - 0.25) < 0.2 ? (x < 0.5 ? 1 : -1) : 0);
const halfWave = (x: number): number => Math.max(0, Math.sin(2 * Math.PI * x));

test('the crest factor of a flat top keeps its doubt, though offset and distortion can only raise the larger end', () => {
  // 1 % of a range of two peaks either way, and 0.3 % an order: what is assumed of a scope.
  for (const offset of [-0.0198, -0.01, 0.01, 0.0198]) {
    const { value, uncertainty } = measureWave(inputOf(seen(modified, offset, 0.003), 20_000)).figures
      .crestFactor as {
      value: number;
      uncertainty: number;
    };
    expect(Math.abs(value - 1 / Math.sqrt(0.8))).toBeLessThan(uncertainty);
  }
});

test('a half wave has one peak: nothing is doubted of which end is the larger', () => {
  const { budget } = measureWave(inputOf(seen(halfWave, 0, 0), 20_000)).figures.crestFactor as unknown as {
    budget: { components: { source: string }[] };
  };
  expect(budget.components.map(({ source }) => source)).not.toContain('peak or trough, the larger');
});
