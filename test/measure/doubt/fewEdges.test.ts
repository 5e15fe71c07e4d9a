import { expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { measureWave } from '../../../src/measure/measureWave.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { inputOf } from '../inputOf.ts';

const RATE_HZ = 20_000;

/** Of a square wave of 50 Hz with edges of 0.2 % of the period and noise of 0.3 %, from a phase in cycles; null: refused. */
function frequencyOf(cycles: number, phase: number): { value: number; uncertainty: number } | null {
  const normal = gaussianNumbers(randomNumbers(Math.round(1e4 * (cycles + 7 * phase))));
  const samples = Float64Array.from({ length: Math.round((cycles * RATE_HZ) / 50) }, (_, n) => {
    const x = Math.sin(2 * Math.PI * (phase + (50 * n) / RATE_HZ)) / (Math.PI * 0.002);
    return 100 * Math.max(-1, Math.min(1, x)) + 0.3 * normal();
  });
  try {
    const { frequencyHz } = measureWave(inputOf(samples, RATE_HZ)).figures;
    if (frequencyHz.value === null) throw new Error(JSON.stringify(frequencyHz.reason));
    return frequencyHz;
  } catch (error) {
    if (error instanceof MeasureError) return null;
    throw error;
  }
}

/** Edges stand where the phase passes a multiple of half a cycle. */
const edgesIn = (cycles: number, phase: number): number =>
  Math.floor(2 * (phase + cycles) - 1e-9) - Math.floor(2 * phase);

test('a square wave of one to three cycles: two edges leave the frequency in doubt, and no interval misses it', () => {
  let two = 0;
  for (const cycles of [1.33, 1.38, 1.42, 1.46, 1.7, 2.3, 2.9]) {
    for (let i = 0; i < 12; i++) {
      const phase = (i + 0.37) / 12;
      const measured = frequencyOf(cycles, phase);
      if (measured === null) {
        // Only where no edge is seen again may a record over 1.3 periods be taken for a shorter one.
        expect(edgesIn(cycles, phase), `${cycles} cycles from ${phase}`).toBe(2);
        continue;
      }
      const { value, uncertainty } = measured;
      const at = `${cycles} cycles from ${phase.toFixed(3)}: ${value} ± ${uncertainty}`;
      expect(Math.abs(value - 50), at).toBeLessThanOrEqual(uncertainty);
      if (edgesIn(cycles, phase) === 2) {
        two++;
        // Not one is seen again a period later: a tenth is little.
        expect(uncertainty, at).toBeGreaterThan(5);
      } else if (cycles > 2) {
        // Two whole cycles between edges that are each seen to a sample: 1/800.
        expect(uncertainty, at).toBeLessThan(0.3);
      }
    }
  }
  expect(two).toBeGreaterThan(5);
});
