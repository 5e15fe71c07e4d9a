import { expect, test } from 'vitest';
import { timedSums } from '../../src/signal/fitFolded.ts';
import { fitHarmonics } from '../../src/signal/fitHarmonics.ts';
import { foldedProjections } from '../../src/signal/foldedProjections.ts';
import type { HarmonicFit } from '../../src/signal/harmonicFit.ts';
import { projections } from '../../src/signal/normalEquations.ts';
import { phasors } from '../../src/signal/phasors.ts';
import { sampleWave } from '../../src/synth/sampleWave.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';

const ORDERS = 20;

/** Cycles and samples a cycle: neither whole, whole, and few samples a cycle. */
const records = [
  ['many samples a cycle', 7.3, 1000.37],
  ['a whole number of samples a cycle', 9, 1000],
  ['few samples a cycle', 300.6, 64.21],
] as const;

function recorded(shape: 'clipped' | 'modified', cycles: number, samplesACycle: number): Float64Array {
  return sampleWave(waveNamed[shape]({ edgeCycles: 0.01 }), {
    frequencyHz: 50,
    sampleRateHz: 50 * samplesACycle,
    cycles,
    startPhaseCycles: 0.31,
    offset: 0.02,
    noiseRms: 0.01,
    seed: 4,
  });
}

/** Both fits of one record, from a start some thousandths of a cycle off at its ends. */
function bothFits(samples: Float64Array, samplesACycle: number): readonly [HarmonicFit, HarmonicFit] {
  const omega = ((2 * Math.PI) / samplesACycle) * (1 + (0.003 * samplesACycle) / samples.length);
  const fitted = (folded: boolean): HarmonicFit => fitHarmonics(samples, { orders: ORDERS, omega, folded })!;
  return [fitted(false), fitted(true)];
}

test.each(records)(
  '%s: a folded fit is the direct one, with and without gaps',
  (_, cycles, samplesACycle) => {
    for (const shape of ['clipped', 'modified'] as const) {
      for (const gaps of [false, true]) {
        const samples = recorded(shape, cycles, samplesACycle);
        if (gaps) samples.fill(Number.NaN, 200, 330).fill(Number.NaN, 2000, 2001);
        const [direct, folded] = bothFits(samples, samplesACycle);
        // A parabola within a bin is off by 1e-4 of the highest order, which is under a twentieth of the wave.
        expect(Math.abs(folded.omega - direct.omega)).toBeLessThan(0.01 * direct.deviation.omega);
        for (let k = 0; k < ORDERS; k++) {
          expect(Math.abs(folded.cosine[k]! - direct.cosine[k]!)).toBeLessThan(5e-6);
          expect(Math.abs(folded.sine[k]! - direct.sine[k]!)).toBeLessThan(5e-6);
          expect(Math.abs(folded.deviation.cosine[k]! / direct.deviation.cosine[k]! - 1)).toBeLessThan(5e-4);
          expect(Math.abs(folded.deviation.sine[k]! / direct.deviation.sine[k]! - 1)).toBeLessThan(5e-4);
        }
        expect(folded.count).toBe(direct.count);
        expect(Math.abs(folded.mean - direct.mean)).toBeLessThan(5e-7);
        expect(Math.abs(folded.deviation.omega / direct.deviation.omega - 1)).toBeLessThan(5e-4);
        expect(Math.abs(folded.residualDeviation / direct.residualDeviation - 1)).toBeLessThan(5e-5);
        const [ofFolded, ofDirect] = [folded, direct].map(({ residual }) => residual.stretch(100, 2500));
        ofFolded!.forEach((r, i) => {
          if (Number.isNaN(ofDirect![i]!)) expect(r).toBeNaN();
          // Forty coefficients, each off by 5e-6, at the worst.
          else expect(Math.abs(r - ofDirect![i]!)).toBeLessThan(2e-4);
        });
      }
    }
  },
);

test('foldedProjections are the direct sums over the samples', () => {
  const samples = recorded('modified', 5.7, 911.3);
  samples[70] = Number.NaN;
  const omega = (2 * Math.PI) / 911.3;
  const { plain, timed, square, missing } = foldedProjections(samples, omega, ORDERS);
  const centre = (samples.length - 1) / 2;
  const turns = phasors(samples.length, omega);
  const direct = projections(samples, turns, ORDERS);
  const directTimed = projections(
    samples.map((y, n) => y * (n - centre)),
    turns,
    ORDERS,
  );
  const half = samples.length / 2;
  for (let i = 0; i < plain.length; i++) {
    expect(Math.abs(plain[i]! - direct[i]!) / half).toBeLessThan(5e-6);
    // The frequency needs them to a part in a thousand: a line within a bin is enough.
    expect(Math.abs(timed[i]! - directTimed[i]!) / half ** 2).toBeLessThan(1e-4);
  }
  expect(missing).toEqual([70]);
  const directSquare = samples.reduce((sum, y) => (Number.isNaN(y) ? sum : sum + y * y), 0);
  // Sums in another order.
  expect(Math.abs(square - directSquare)).toBeLessThan(5e-9);
});

test('timedSums are the direct sums over the present samples', () => {
  const [length, omega, highest] = [401, 0.031, 40];
  const missing = [0, 17, 18, 400];
  timedSums(length, omega, highest, missing).forEach(({ cos, sin }, power) => {
    for (let m = 0; m <= highest; m++) {
      let [directCos, directSin] = [0, 0];
      for (let n = 0; n < length; n++) {
        if (missing.includes(n)) continue;
        const u = n - (length - 1) / 2;
        directCos += u ** power * Math.cos(m * omega * u);
        directSin += u ** power * Math.sin(m * omega * u);
      }
      const size = length ** (power + 1);
      expect(Math.abs(cos[m]! - directCos) / size).toBeLessThan(1e-13);
      expect(Math.abs(sin[m]! - directSin) / size).toBeLessThan(1e-13);
    }
  });
});
