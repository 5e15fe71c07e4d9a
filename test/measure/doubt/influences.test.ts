import { expect, test } from 'vitest';
import type { BudgetedFigure } from '../../../src/measure/doubt/budget.ts';
import { ASSUMED_INSTRUMENT } from '../../../src/measure/doubt/instrument.ts';
import { bandwidthLoss } from '../../../src/measure/harmonicFigures.ts';
import { measureWave } from '../../../src/measure/measureWave.ts';
import { sampleWave } from '../../../src/synth/sampleWave.ts';
import { waveNamed } from '../../../src/synth/waveNamed.ts';
import { inputOf } from '../inputOf.ts';

const rate = 20_000;
const sine = (cycles: number, noiseRms = 0.002): Float64Array =>
  sampleWave(waveNamed.harmonics({}), { frequencyHz: 50, sampleRateHz: rate, cycles, noiseRms }).map(
    (x) => 170 * x,
  );
const sourcesOf = (figure: unknown): string[] =>
  (figure as BudgetedFigure).budget.components.map(({ source }) => source);

test('cycles that differ by more than noise explains add their scatter, with Student degrees of freedom', () => {
  const steady = measureWave(inputOf(sine(8.2), rate)).figures;
  expect(sourcesOf(steady.rms)).not.toContain('scatter between cycles');
  // Every other cycle 1 % larger.
  const uneven = sine(8.2).map((x, n) => (Math.floor(n / 400) % 2 === 0 ? x : 1.01 * x));
  const { budget } = measureWave(inputOf(uneven, rate)).figures.rms as BudgetedFigure;
  const scatter = budget.components.find(({ source }) => source === 'scatter between cycles')!;
  expect(scatter).toMatchObject({ type: 'A', distribution: 'student', degreesOfFreedom: 7 });
  // Eight sizes ± 0.5 %: s = 0.5 %·√(8/7), over √8.
  expect(Math.abs(scatter.standardUncertainty - (0.5 * Math.sqrt(8 / 7)) / Math.sqrt(8))).toBeLessThan(0.01);
});

test('a told bandwidth adds what a first-order low-pass takes; an unknown one adds nothing', () => {
  const told = measureWave(inputOf(sine(6), rate), {
    instrument: { ...ASSUMED_INSTRUMENT, bandwidthHz: 500 },
  }).figures;
  expect(sourcesOf(told.thdPercent)).toContain('bandwidth');
  expect(sourcesOf(told.rms)).toContain('bandwidth');
  expect(sourcesOf(measureWave(inputOf(sine(6), rate)).figures.thdPercent)).not.toContain('bandwidth');
  // At its corner a first-order low-pass takes 1 − 1/√2, so the whole is √2 of what is seen.
  const { orderRatio, rmsRatio, thdPercent } = bandwidthLoss(
    [
      { order: 1, percent: 100 },
      { order: 10, percent: 10 },
    ],
    1e-3,
    1e-2,
  );
  expect(Math.abs(orderRatio(10) - (Math.SQRT2 / Math.sqrt(1.01) - 1))).toBeLessThan(1e-12);
  expect(Math.abs(thdPercent - 10 * (Math.SQRT2 / Math.sqrt(1.01) - 1))).toBeLessThan(1e-12);
  expect(Math.abs(rmsRatio - (Math.sqrt((1.01 * 1e4 + 2 * 1e2) / (1e4 + 1e2)) - 1))).toBeLessThan(1e-12);
});

test('the meter replaces gain and probe and leaves the offset', () => {
  const { figures } = measureWave(
    inputOf(
      sine(6).map((x) => x + 20),
      rate,
    ),
    { scaleSource: 'meter' },
  );
  const sources = sourcesOf(figures.rms);
  expect(sources).toContain('accuracy of the meter');
  expect(sources).toContain('vertical offset');
  expect(sources).not.toContain('vertical gain');
  expect(sources).not.toContain('probe ratio');
});

test('gain and probe cancel in ratios; the time base is in the frequency alone', () => {
  const { figures } = measureWave(inputOf(sine(6), rate));
  for (const ratio of [
    figures.crestFactor,
    figures.formFactor,
    figures.thdPercent,
    figures.deviationFactorPercent,
  ]) {
    expect(sourcesOf(ratio)).not.toContain('vertical gain');
    expect(sourcesOf(ratio)).not.toContain('time base');
  }
  expect(sourcesOf(figures.frequencyHz)).toContain('time base');
});

test('a distortion under the floor keeps its value and gains a bound', () => {
  const clean = sampleWave(waveNamed.sine({}), {
    frequencyHz: 50,
    sampleRateHz: rate,
    cycles: 6,
    noiseRms: 0.01,
  });
  const { thdPercent, harmonics } = measureWave(inputOf(clean, rate)).figures;
  if (thdPercent.value === null) throw new Error(JSON.stringify(thdPercent.reason));
  expect(thdPercent.value).toBeGreaterThan(0);
  expect(thdPercent.notAbove).toBeGreaterThan(0);
  expect(thdPercent.notAbove).toBeLessThan(1);
  expect(harmonics[4]!.notAbovePercent).toBeGreaterThan(0);
});
