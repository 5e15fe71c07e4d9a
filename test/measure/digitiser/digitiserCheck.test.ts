import { expect, test } from 'vitest';
import { type DigitiserInput, digitiserCheck } from '../../../src/measure/digitiser/digitiserCheck.ts';
import type { DigitiserFigures } from '../../../src/measure/digitiser/digitiserFigures.ts';
import { fitHarmonics } from '../../../src/signal/fitHarmonics.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { quantised } from '../../../src/synth/sampleWave.ts';

const OMEGA = (2 * Math.PI * 50.03) / 10_000;

interface Converter {
  readonly amplitude: number;
  readonly bits: number;
  readonly fullScale: number;
  readonly noiseRms?: number;
  readonly third?: number;
}

/** A sine of 50.03 Hz through an ideal converter, 20 000 samples at 10 kS/s. */
function converted({ amplitude, bits, fullScale, noiseRms = 0, third = 0 }: Converter): Float64Array {
  const normal = gaussianNumbers(randomNumbers(7));
  return Float64Array.from({ length: 20_000 }, (_, n) => {
    const v = amplitude * Math.sin(OMEGA * n + 0.4) + third * Math.sin(3 * OMEGA * n) + noiseRms * normal();
    return quantised(v, bits, fullScale);
  });
}

function check(
  samples: Float64Array,
  stepSize: number | null,
  more: Partial<DigitiserInput> & { readonly orders?: number } = {},
): DigitiserFigures {
  const { orders = 1, ...rest } = more;
  const fit = fitHarmonics(samples, { orders, omega: OMEGA })!;
  const figures = digitiserCheck({ samples, stepSize, bits: 8, fit, smooth: true, ...rest });
  if ('reason' in figures) throw new Error(JSON.stringify(figures.reason));
  return figures;
}

const codes = ({ notices }: DigitiserFigures): string[] => notices.map(({ code }) => code);

/**
 * Rounding errors of a sine of a steps: e = Σ (−1)^k·sin(2πk·a·sin θ) / πk, so that in steps
 * mean e² = 1/12 + Σ (−1)^k·J0(2πka) / (πk)², and its part along the sine is Σ (−1)^k·2·J1(2πka) / πk.
 * W. R. Bennett, Bell Syst. Tech. J. 27, 1948, 446–472; R. M. Gray, IEEE Trans. Inf. Theory 36(6), 1990, 1220–1244
 * (from memory; checked here by numerical means of the Bessel integrals).
 */
function roundedSine(a: number): { readonly nad: number; readonly along: number } {
  const points = 20_000;
  let [square, along] = [1 / 12, 0];
  for (let k = 1; k <= 20; k++) {
    let [j0, j1] = [0, 0];
    for (let n = 0; n < points; n++) {
      const theta = (2 * Math.PI * (n + 0.5)) / points;
      const z = 2 * Math.PI * k * a * Math.sin(theta);
      j0 += Math.cos(z) / points;
      j1 += (Math.sin(z) * Math.sin(theta)) / points;
    }
    const sign = k % 2 === 0 ? 1 : -1;
    square += (sign * j0) / (Math.PI * k) ** 2;
    along += (sign * 2 * j1) / (Math.PI * k);
  }
  return { nad: Math.sqrt(square - along ** 2 / 2), along };
}

/** Were the codes met at random, mean e² of N samples would scatter by 12/√180/√N = 0.63 %, its root by half that. */
const SCATTER = 0.0032;

test('an ideal converter of ± 400 V on 325 V: noise in closed form, effective bits as by the method of IEEE 1057', () => {
  for (const [bits, effective] of [
    [8, 7.98],
    [10, 10.005],
    [12, 12.001],
  ] as const) {
    const step = 800 / 2 ** bits;
    const figures = check(converted({ amplitude: 325, bits, fullScale: 400 }), step, { bits });
    const { nad } = roundedSine(325 / step);
    expect(Math.abs(figures.noiseRms / step / nad - 1)).toBeLessThan(4 * SCATTER);
    // The table's amplitude is "about 325": J0 swings by √(2/π / (2πa)) whichever way, in bits that over π²/12 · ln 4.
    const swing = Math.sqrt(2 / Math.PI / (2 * Math.PI * (325 / step)));
    const inBits = (swing * 12) / Math.PI ** 2 / Math.log(4);
    expect(Math.abs(figures.effectiveBits! - effective)).toBeLessThan(2 * inBits + (4 * SCATTER) / Math.LN2);
    expect(figures.missingCodes).toBe(0);
    expect(figures.clipped).toBe(null);
    expect(figures.notices).toEqual([]);
  }
});

test('SINAD of an ideal converter at full scale, 6.0206·b + 1.7609 dB', () => {
  for (const [bits, decibels] of [
    [6, 37.8845],
    [8, 49.9257],
    [10, 61.9669],
    [12, 74.0081],
  ] as const) {
    // A step short of the range, since a mid-tread converter ends there.
    const step = 2 / 2 ** bits;
    const amplitude = 1 - step;
    const figures = check(converted({ amplitude, bits, fullScale: 1 }), step, { bits });
    const { nad, along } = roundedSine(amplitude / step);
    const fitted = amplitude + step * along;
    // Printed to four digits; rounding noise moves the fitted amplitude by q/√12 · √(2/N), four times that.
    const ofFit = (20 / Math.LN10) * 4 * (step / Math.sqrt(12) / amplitude) * Math.sqrt(2 / 20_000);
    expect(Math.abs(figures.idealSinadDb! - 20 * Math.log10(fitted) - decibels)).toBeLessThan(5e-5 + ofFit);
    const reached = 20 * Math.log10(fitted / Math.SQRT2 / (step * nad));
    expect(Math.abs(figures.sinadDb! - reached)).toBeLessThan((20 / Math.LN10) * 4 * SCATTER);
  }
});

test('white noise: NAD, SINAD and effective bits by their definitions', () => {
  const step = 800 / 2 ** 12;
  const figures = check(converted({ amplitude: 325, bits: 12, fullScale: 400, noiseRms: 2 }), step, {
    bits: 12,
  });
  const noise = Math.hypot(2, step / Math.sqrt(12));
  // The RMS of 20 000 samples scatters by 1/√40000 = 0.5 %: four times that.
  expect(Math.abs(figures.noiseRms / noise - 1)).toBeLessThan(0.02);
  expect(Math.abs(figures.sinadDb! - 20 * Math.log10(325 / Math.SQRT2 / noise))).toBeLessThan(0.18);
  expect(Math.abs(figures.effectiveBits! - Math.log2(800 / (noise * Math.sqrt(12))))).toBeLessThan(0.03);
  expect(codes(figures)).toEqual(['digitiser.noise']);
});

test("the wave's harmonics count against SINAD and effective bits, not against the noise", () => {
  const step = 800 / 2 ** 10;
  const samples = converted({ amplitude: 325, bits: 10, fullScale: 400, third: 13, noiseRms: 0.5 });
  const figures = check(samples, step, { bits: 10, orders: 10 });
  const noise = Math.hypot(0.5, step / Math.sqrt(12));
  // 0.5 % of scatter, four times.
  expect(Math.abs(figures.noiseRms / noise - 1)).toBeLessThan(0.02);
  expect(Math.abs(figures.noiseAndDistortionRms / Math.hypot(noise, 13 / Math.SQRT2) - 1)).toBeLessThan(
    0.001,
  );
  expect(figures.effectiveBits!).toBeLessThan(figures.noiseBits! - 3);
});

test('levels used and the setting that would use more', () => {
  // 65 V peak on ± 400 V: 2 · 65 / 3.125 = 41.6, codes −21 to 21.
  const samples = converted({ amplitude: 65, bits: 8, fullScale: 400 });
  const figures = check(samples, 3.125);
  expect([figures.levelsUsed, figures.levelsAvailable]).toEqual([43, 256]);
  expect(codes(figures)).toEqual(['digitiser.range']);
  // 131 V in 8 divisions of 20 V: 82 %.
  expect(figures.notices[0]).toMatchObject({
    ...{ levelsUsed: 43, levelsAvailable: 256, bitsAssumed: false },
    ...{ perDivision: 20, unit: 'V', fillPercent: (100 * 42 * 3.125) / 160, divisions: 8 },
  });
  // Ten times less on the scope's knob where the values were multiplied by ten.
  expect(check(samples, 3.125, { scale: -10 }).notices[0]).toMatchObject({ perDivision: 2, unit: 'V' });
  expect(check(samples, 3.125, { unit: 'A' }).notices[0]).toMatchObject({ perDivision: 20, unit: 'A' });
});

test('a cut top is found, with the next setting where the whole range is used', () => {
  const cut = converted({ amplitude: 440, bits: 8, fullScale: 400 });
  const both = check(cut, 3.125, { orders: 20 });
  expect(both.clipped).toBe('both');
  expect(codes(both)).toContain('digitiser.clipped');
  // 800 V in 8 divisions: 100 V; a fifth more is past it, so 200 V.
  expect(both.notices[0]).toMatchObject({ ends: 'both', perDivision: 200, unit: 'V' });
  const top = check(
    converted({ amplitude: 325, bits: 8, fullScale: 400 }).map((x) => Math.min(x, 200)),
    3.125,
    { orders: 20 },
  );
  expect(top.clipped).toBe('top');
  expect(top.notices[0]).toMatchObject({ ends: 'top', perDivision: null });
});

test('missing codes are counted; a step stated too fine is told', () => {
  const samples = converted({ amplitude: 325, bits: 8, fullScale: 400, noiseRms: 1 });
  const without = (lost: readonly number[]): Float64Array =>
    samples.map((x) => (lost.includes(Math.round(x / 3.125)) ? x + 3.125 : x));
  expect(check(samples, 3.125).missingCodes).toBe(0);
  const one = check(without([12]), 3.125);
  expect(one.missingCodes).toBe(1);
  expect(one.notices[0]).toMatchObject({ missing: 1, isOfFile: false });
  const three = check(without([-40, 0, 33]), 3.125);
  expect(three.missingCodes).toBe(3);
  expect(codes(three)).toEqual(['digitiser.missingCodes']);
  const halved = check(samples, 3.125 / 2, { bits: 9 });
  expect(halved.missingCodes!).toBeGreaterThan(90);
  expect(halved.notices[0]).toMatchObject({ code: 'digitiser.missingCodes', isOfFile: true });
});

test('codes that a printed grid skips every so often are not missing', () => {
  // Steps of 0.0204 V printed to 0.02 V: every 51st place of the grid stays empty.
  const samples = converted({ amplitude: 1.6, bits: 8, fullScale: 128 * 0.0204, noiseRms: 0.01 }).map(
    (x) => Math.round(x / 0.02) * 0.02,
  );
  const figures = check(samples, 0.02);
  expect(figures.levelsUsed!).toBeGreaterThan(158);
  expect(figures.missingCodes).toBe(0);
});

test('a wave locked to the sample clock meets few codes: none of them is missing', () => {
  // 200 samples a cycle, the same 200 in all hundred cycles.
  const omega = (2 * Math.PI) / 200;
  const samples = Float64Array.from({ length: 20_000 }, (_, n) =>
    quantised(325 * Math.sin(omega * n + 0.1), 8, 400),
  );
  const fit = fitHarmonics(samples, { orders: 40, omega })!;
  const figures = digitiserCheck({ samples, stepSize: 3.125, bits: 8, fit, smooth: true });
  expect('reason' in figures ? figures.reason : figures.missingCodes).toBe(0);
});

test('codes that noise alone leaves empty are not missing, though the wave is locked to the sample clock', () => {
  // 25 times the same 400 samples, each spread by noise of ten codes over some forty of 13,000.
  const omega = (2 * Math.PI) / 400;
  const normal = gaussianNumbers(randomNumbers(5));
  const samples = Float64Array.from(
    { length: 10_000 },
    (_, n) => 0.05 * Math.round((325 * Math.sin(omega * n + 0.4) + 0.5 * normal()) / 0.05),
  );
  const fit = fitHarmonics(samples, { orders: 40, omega })!;
  const figures = digitiserCheck({ samples, stepSize: 0.05, bits: null, fit, smooth: true });
  expect('reason' in figures ? figures.reason : figures.missingCodes).toBe(0);
});

test('without a stated resolution it is assumed; without a step only what needs none is told', () => {
  const small = check(converted({ amplitude: 65, bits: 8, fullScale: 400 }), 3.125, { bits: null });
  expect([small.bits, small.bitsAssumed]).toEqual([8, true]);
  expect(small.notices[0]).toMatchObject({ bitsAssumed: true, divisions: 8 });
  // More levels than 8 bits have: the converter's range is anybody's guess.
  const samples = converted({ amplitude: 325, bits: 10, fullScale: 400 });
  const unknown = check(samples, 800 / 1024, { bits: null });
  expect([unknown.bits, unknown.bitsAssumed, unknown.effectiveBits, unknown.levelsAvailable]).toEqual([
    null,
    false,
    null,
    null,
  ]);
  expect(unknown.levelsUsed).toBe(833);
  const float = check(samples, null, { bits: null });
  expect(float.sinadDb).not.toBe(null);
  for (const missing of [
    float.effectiveBits,
    float.levelsUsed,
    float.missingCodes,
    float.bits,
    float.idealSinadDb,
  ]) {
    expect(missing).toBe(null);
  }
  // Values that stand on no grid of the step given: no codes to count.
  const normal = gaussianNumbers(randomNumbers(4));
  const off = check(
    samples.map((x) => x + normal()),
    3.125,
  );
  expect([off.levelsUsed, off.missingCodes, off.clipped]).toEqual([null, null, null]);
});

test('waves with edges, and what is left of a wave with ripple or drift, say why there is no answer', () => {
  const samples = converted({ amplitude: 325, bits: 8, fullScale: 400 });
  const fit = fitHarmonics(samples, { orders: 5, omega: OMEGA })!;
  const edges = digitiserCheck({ samples, stepSize: 3.125, bits: 8, fit, smooth: false });
  expect(edges).toEqual({ reason: { code: 'digitiser.edges' } });
  for (const disturbed of [
    samples.map((x, n) => x + 9 * Math.sin(2.2 * n)),
    samples.map((x, n) => x * (1 + (0.05 * n) / 20_000)),
  ]) {
    const left = fitHarmonics(disturbed, { orders: 5, omega: OMEGA })!;
    const figures = digitiserCheck({ samples: disturbed, stepSize: null, bits: 8, fit: left, smooth: true });
    expect(figures).toEqual({ reason: { code: 'digitiser.ownLines' } });
  }
});
