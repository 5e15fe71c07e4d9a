import { expect, test } from 'vitest';
import { findRipple, type Ripple } from '../../../src/measure/bands/findRipple.ts';
import { acquisitionNotice, aliasNotice, highBands } from '../../../src/measure/bands/highBands.ts';
import { hannPower } from '../../../src/signal/hannPower.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { storedResidual } from '../../../src/signal/residual.ts';
import { fitAt, type Tone, toneSum } from '../groups/toneSum.ts';

/** Carrier and sidebands of a modulator, offsets in multiples of 50 Hz, beside 230 V and noise. */
function rippleOf(
  carrierHz: number,
  lines: readonly (readonly [number, number])[],
  count = 20_000,
): Ripple | null {
  const rate = 100_000;
  const tones: Tone[] = lines.map(([offset, rms], i) => [carrierHz + 50 * offset, rms, i]);
  const normal = gaussianNumbers(randomNumbers(2));
  const samples = toneSum([[50, 230], ...tones], rate, count).map((x) => x + 0.2 * normal());
  const { residual } = fitAt(samples, 50, rate, 20);
  return findRipple({ residual, intervalS: 1 / rate, fundamentalHz: 50, fundamentalRms: 230 });
}

/** A bin of 16384 samples at 100 kS/s is 6.1 Hz wide. */
const BIN_HZ = 100_000 / 16_384;

test('bipolar modulation: the carrier with even sidebands (amplitudes of Mohan, Table 8-1, ma = 0.8, over 100)', () => {
  const lines = [
    [-2, 2.2],
    [0, 8.18],
    [2, 2.2],
  ] as const;
  const ripple = rippleOf(18_013, lines)!;
  expect(Math.abs(ripple.frequencyHz - 18_013)).toBeLessThan(BIN_HZ / 10);
  expect(ripple.lines!.map(({ offset }) => offset)).toEqual([-2, 0, 2]);
  // The lobe holds 99.9 % of a line's power; 0.2 V of noise over five bins adds 0.01 V at any phase.
  ripple.lines!.forEach(({ rms }, i) => {
    expect(Math.abs(rms - lines[i]![1])).toBeLessThan(0.002 * lines[i]![1] + 0.02);
  });
  expect(Math.abs(ripple.rms - Math.hypot(2.2, 8.18, 2.2))).toBeLessThan(0.02);
});

test('unipolar modulation: odd sidebands about a carrier that is missing, whichever is the strongest', () => {
  for (const tilt of [1.02, 0.98]) {
    const ripple = rippleOf(32_000, [
      [-3, 1.395],
      [-1, 3.144],
      [1, 3.144 * tilt],
      [3, 1.395],
    ])!;
    expect(Math.abs(ripple.frequencyHz - 32_000)).toBeLessThan(BIN_HZ / 10);
    expect(ripple.lines!.map(({ offset }) => offset)).toEqual([-3, -1, 1, 3]);
  }
});

test('white noise and tones too small are no ripple; a short record gives no single lines', () => {
  expect(rippleOf(20_000, [])).toBe(null);
  expect(rippleOf(20_000, [[0, 0.1]])).toBe(null);
  const short = rippleOf(20_000, [[0, 5]], 5000)!;
  expect(short.lines).toBe(null);
  // The window's lobe, 24 Hz wide, is taken whole; noise adds 0.2 V · √(32 bins · 1.5 / 2048).
  expect(Math.abs(short.rms - 5)).toBeLessThan(0.04);
  expect(Math.abs(short.frequencyHz - 20_000)).toBeLessThan((100_000 / 4096) * 0.1);
});

test("noise's own power is taken off, and its scatter is what rmsDeviation says", () => {
  const normal = gaussianNumbers(randomNumbers(3));
  const tone = toneSum([[20_000, 1, 1]], 100_000, 16_384);
  const runs = 60;
  let [mean, square, deviation] = [0, 0, 0];
  for (let run = 0; run < runs; run++) {
    const residual = tone.map((x) => x + 2 * normal());
    const { rms, rmsDeviation } = findRipple({
      residual: storedResidual(residual),
      intervalS: 1e-5,
      fundamentalHz: 50,
      fundamentalRms: 230,
    })!;
    mean += rms / runs;
    square += (rms * rms) / runs;
    deviation += rmsDeviation / runs;
  }
  const scatter = Math.sqrt(square - mean * mean);
  // The mean of 60 runs scatters by 0.13 of one run's deviation; a deviation from 60 runs by 9 %: four times each.
  expect(Math.abs(mean - 1)).toBeLessThan(0.52 * deviation);
  expect(Math.abs(scatter / deviation - 1)).toBeLessThan(0.36);
});

test('hannPower(samples): Parseval for a periodic record, and a line by its lobe', () => {
  const samples = toneSum(
    [
      [10, 3, 1],
      [20.5, 2],
    ],
    256,
    256,
  );
  const { power } = hannPower(samples)!;
  // Σ w²x² / Σ w² by definition.
  let [weighted, weight] = [0, 0];
  samples.forEach((x, n) => {
    const w = (0.5 - 0.5 * Math.cos((2 * Math.PI * n) / 256)) ** 2;
    weighted += w * x * x;
    weight += w;
  });
  const total = power.reduce((sum, p) => sum + p, 0);
  expect(Math.abs(total - weighted / weight)).toBeLessThan(1e-12);
  expect(hannPower(new Float64Array(15))).toBe(null);
});

test('a wave with edges has harmonics up there, no ripple', () => {
  const rate = 100_000;
  const fit = fitAt(
    toneSum(
      [
        [50, 230],
        [20_000, 5],
      ],
      rate,
      20_000,
    ),
    50,
    rate,
    20,
  );
  const common = { intervalS: 1 / rate, fit, nominalFrequencyHz: null, acquisition: null };
  expect(highBands({ ...common, smooth: false })!.ripple).toBe(null);
  const smooth = highBands({ ...common, smooth: true, acquisition: 'average' })!;
  expect(Math.abs(smooth.ripple!.rms - 5)).toBeLessThan(1e-3);
  expect(smooth.notices.map(({ code }) => code)).toEqual(['ripple.alias', 'acquisition.mode']);
});

test('what may be an alias says so, with the rate that would tell', () => {
  expect(aliasNotice(48_600, 100_000)).toMatchObject({ isNearHalf: true, neededHz: 500_000 });
  expect(aliasNotice(3100, 20_000)).toEqual({
    code: 'ripple.alias',
    ...{ rippleHz: 3100, sampleRateHz: 20_000, isNearHalf: false, neededHz: 200_000 },
  });
  expect(aliasNotice(20_000, 1e6)).toBe(null);
  expect(aliasNotice(460_000, 1e6)).toMatchObject({ isNearHalf: true, neededHz: 5e6 });
});

test('acquisition modes that hide or enlarge ripple are told; plain samples are not', () => {
  expect(acquisitionNotice(null)).toBe(null);
  expect(acquisitionNotice('sample')).toBe(null);
  expect(acquisitionNotice('average')).toEqual({ code: 'acquisition.mode', acquisition: 'average' });
});
