import { expect, test } from 'vitest';
import { MeasureError } from '../../src/base/measureError.ts';
import { measureWave } from '../../src/measure/measureWave.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';
import { sampleWave } from '../../src/synth/sampleWave.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';
import { inputOf } from './inputOf.ts';

const rate = 20_000;
const sine = (cycles: number): Float64Array =>
  sampleWave(waveNamed.harmonics({}), {
    frequencyHz: 50,
    sampleRateHz: rate,
    cycles,
    startPhaseCycles: 0.1,
  }).map((x) => 325 * x);
const codeOf = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof MeasureError) return error.code;
    throw error;
  }
  return 'measured';
};

test('a gap under half a cycle keeps its place: the figures are those of the whole wave', () => {
  const samples = sine(5.2);
  const whole = measureWave(inputOf(samples, rate)).figures;
  const holed = samples.map((x, n) => (n >= 700 && n < 860 ? Number.NaN : x));
  const { figures } = measureWave(inputOf(holed, rate));
  expect(Math.abs(figures.rms.value! / whole.rms.value! - 1)).toBeLessThan(1e-9);
  expect(Math.abs(figures.thdPercent.value! - whole.thdPercent.value!)).toBeLessThan(1e-7);
  expect(figures.spanS).toEqual(whole.spanS);
});

test('a gap over half a cycle splits the record: the longest part is measured, and a notice names it', () => {
  const samples = sine(9).map((x, n) => (n >= 800 && n < 1100 ? Number.NaN : x));
  const { figures } = measureWave(inputOf(samples, rate));
  expect(figures.spanS[0]).toBe(1100 / rate);
  expect(Math.abs(figures.spanS[1] - 9 / 50)).toBeLessThan(1e-12);
  expect(figures.notices[0]!.code).toBe('span.longest');
  expect(Math.abs(figures.frequencyHz.value! - 50)).toBeLessThan(1e-6);
});

test('under 1.3 cycles it is refused; at 1.3 it is measured', () => {
  for (const cycles of [0.4, 0.8, 1, 1.1, 1.2, 1.27])
    expect(codeOf(() => measureWave(inputOf(sine(cycles), rate)))).toMatch(/^wave\.(tooShort|noPeriod)$/);
  expect(codeOf(() => measureWave(inputOf(sine(1.3), rate)))).toBe('measured');
});

test('how long the record is and how much of a cycle it holds is known, so that what to set can be said', () => {
  try {
    measureWave(inputOf(sine(1.1), rate));
    expect.unreachable();
  } catch (error) {
    const { facts } = error as { facts: { cycles: number | null; lengthS: number } };
    expect(Math.abs(facts.lengthS - 1.1 / 50)).toBeLessThanOrEqual(1 / rate);
    // So that “about 1.1” is what a reader is told: two digits of it are right.
    expect(facts.cycles!.toFixed(1)).toBe('1.1');
  }
});

test('DC and noise have no wave: mean and RMS stand, figures of a period give their reason', () => {
  const normal = gaussianNumbers(randomNumbers(4));
  const dc = measureWave(
    inputOf(
      Float64Array.from({ length: 3000 }, () => 12 + 0.02 * normal()),
      rate,
    ),
  );
  expect(dc.aperiodic).toBe('constant');
  expect(Math.abs(dc.figures.rms.value! - 12)).toBeLessThan(0.01);
  expect(dc.figures.frequencyHz).toEqual({
    value: null,
    reason: { code: 'wave.repeatsNot', of: 'constant' },
  });
  const noise = measureWave(
    inputOf(
      Float64Array.from({ length: 3000 }, () => normal()),
      rate,
    ),
  );
  expect(noise.aperiodic).toBe('noise');
  expect(measureWave(inputOf(new Float64Array(100).fill(5), rate)).aperiodic).toBe('constant');
});

test('short records of noise are noise, whatever swing of their own length they happen to hold', () => {
  const normal = gaussianNumbers(randomNumbers(8));
  for (let i = 0; i < 100; i++) {
    const record = Float64Array.from({ length: 400 }, () => normal());
    expect(measureWave(inputOf(record, rate)).aperiodic).toBe('noise');
  }
});

test('a wave of 1.1 cycles under heavy noise is still a wave too short, no noise', () => {
  const normal = gaussianNumbers(randomNumbers(9));
  const record = sine(1.1).map((x) => x + 0.3 * Math.max(...sine(1.1)) * normal());
  expect(() => measureWave(inputOf(record, rate))).toThrow(
    expect.objectContaining({ code: 'wave.tooShort' }),
  );
});

test('an AC-coupled channel has no measurable mean', () => {
  const { figures } = measureWave({ ...inputOf(sine(4), rate), acCoupled: true });
  expect(figures.mean.value).toBeNull();
  expect(figures.notices.map(({ code }) => code)).toContain('coupling.ac');
});

test('doubts: few cycles, coarse resolution, low rate, drift, clipping', () => {
  const codes = (samples: Float64Array, sampleRateHz = rate): string[] =>
    measureWave(inputOf(samples, sampleRateHz)).figures.notices.map(({ code }) => code);
  expect(codes(sine(5))).toEqual([]);
  expect(codes(sine(2.2))).toEqual(['cycles.few']);
  expect(codes(sine(5).map((x) => Math.round(x / 15) * 15))).toContain('resolution.coarse');
  expect(
    codes(sampleWave(waveNamed.sine({}), { frequencyHz: 50, sampleRateHz: 3000, cycles: 6 }), 3000),
  ).toEqual(['rate.low', 'rate.steps']);
  expect(
    codes(sampleWave(waveNamed.sine({}), { frequencyHz: 50, sampleRateHz: 7000, cycles: 6 }), 7000),
  ).toEqual(['rate.steps']);
  expect(
    codes(sampleWave(waveNamed.sine({}), { frequencyHz: 50, sampleRateHz: 8000, cycles: 6 }), 8000),
  ).toEqual([]);
  expect(codes(sine(8).map((x, n) => x * (1 - n / 60_000)))).toEqual([
    'wave.drifts',
    // A size that changes along the record spreads its line as a line beside it would.
    'frequency.unsteady',
  ]);
  expect(codes(sine(5).map((x) => Math.round(Math.max(-260, Math.min(260, x)) / 2.5) * 2.5))).toContain(
    'wave.clipped',
  );
});

test('a gap of nearly a cycle near the start does not hide the wave behind it', () => {
  const samples = sine(4.8);
  const cycle = rate / 50;
  samples.fill(Number.NaN, Math.round(0.72 * cycle), Math.round(1.68 * cycle));
  const { figures } = measureWave(inputOf(samples, rate));
  // The sine goes on behind the gap for three cycles without noise: rounding alone is left.
  expect(Math.abs(figures.frequencyHz.value! / 50 - 1)).toBeLessThan(1e-9);
  expect(figures.notices.map(({ code }) => code)).toContain('span.longest');
});

test('three cycles are not told to be few, though a part of a sample is missing; what is fewer is', () => {
  const codes = (samples: Float64Array): string[] =>
    measureWave(inputOf(samples, rate)).figures.notices.map(({ code }) => code);
  expect(codes(sine(3).subarray(1))).not.toContain('cycles.few');
  expect(codes(sine(2.9))).toContain('cycles.few');
});

test('noise of a few samples a cycle makes no drift of many cycles', () => {
  const random = gaussianNumbers(randomNumbers(3));
  const wave = (drift: number) =>
    Float64Array.from({ length: 4000 }, (_, n) => {
      const gain = 1 + (drift * n) / 4000;
      return 325 * gain * Math.sin((2 * Math.PI * n) / 16.2) + 13 * random();
    });
  const codes = (samples: Float64Array): string[] =>
    measureWave(inputOf(samples, 20_000)).figures.notices.map(({ code }) => code);
  expect(codes(wave(0))).not.toContain('wave.drifts');
  expect(codes(wave(0.2))).toContain('wave.drifts');
});

test('distortion plus noise next to nothing is not doubted beyond what its squares are', () => {
  const normal = gaussianNumbers(randomNumbers(8));
  for (let run = 0; run < 20; run++) {
    const samples = Float64Array.from(
      { length: 830 },
      (_, n) => 170 * Math.sin((2 * Math.PI * n) / 333.3) + 0.5 * normal(),
    );
    const { thdNoisePercent } = measureWave(inputOf(samples, 20_000)).figures;
    const truth = (100 * 0.5 * Math.SQRT2) / 170;
    const { value, uncertainty } = thdNoisePercent as { value: number; uncertainty: number };
    expect(Math.abs(value - truth)).toBeLessThan(uncertainty);
    // Two and a half cycles: the squares of RMS and fundamental differ by 2·σ/V1·√(Σw² − 1/N) = 1.4e-4, its root 1.2 %.
    expect(uncertainty).toBeLessThan(3.5);
  }
});
