import { expect, test } from 'vitest';
import { classifyWave } from '../../src/judge/waveform/classifyWave.ts';
import { measureWave } from '../../src/measure/measureWave.ts';
import type { WaveFigures } from '../../src/measure/waveFigures.ts';
import { sampleWave } from '../../src/synth/sampleWave.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';
import { inputOf } from './inputOf.ts';

const rate = 30_000;
const record = (shape: 'harmonics' | 'modified', cycles = 5.3): Float64Array =>
  sampleWave(waveNamed[shape]({ dutyRatio: 0.62, edgeCycles: 0.005 }), {
    frequencyHz: 50.2,
    sampleRateHz: rate,
    cycles,
    startPhaseCycles: 0.21,
    noiseRms: 0.004,
    seed: 9,
  });
const figuresOf = (samples: Float64Array): WaveFigures => measureWave(inputOf(samples, rate)).figures;
const ratios = ({
  thdPercent,
  crestFactor,
  formFactor,
  frequencyHz,
  thdNoisePercent,
  deviationFactorPercent,
  dwellPercent,
}: WaveFigures): number[] =>
  [
    thdPercent,
    crestFactor,
    formFactor,
    frequencyHz,
    thdNoisePercent,
    deviationFactorPercent,
    dwellPercent,
  ].map(({ value }) => value!);

test.each(['harmonics', 'modified'] as const)(
  '%s: gain scales the volts and leaves ratios and kind alone',
  (shape) => {
    const unit = measureWave(inputOf(record(shape), rate));
    const plain = unit.figures;
    const scaled = measureWave(
      inputOf(
        record(shape).map((x) => 250 * x),
        rate,
      ),
    );
    expect(Math.abs(scaled.figures.rms.value! / plain.rms.value! - 250)).toBeLessThan(1e-9);
    ratios(scaled.figures).forEach((ratio, i) => {
      expect(Math.abs(ratio - ratios(plain)[i]!)).toBeLessThan(1e-7 * Math.abs(ratio) + 1e-9);
    });
    expect(classifyWave(scaled).kind).toBe(classifyWave(unit).kind);
  },
);

test.each(['harmonics', 'modified'] as const)(
  '%s: upside down, the mean turns and the peaks change places',
  (shape) => {
    const up = figuresOf(record(shape).map((x) => x + 0.03));
    const down = figuresOf(record(shape).map((x) => -x - 0.03));
    expect(Math.abs(up.mean.value! + down.mean.value!)).toBeLessThan(1e-9);
    expect(Math.abs(up.rms.value! - down.rms.value!)).toBeLessThan(1e-9);
    expect(Math.abs(up.thdPercent.value! - down.thdPercent.value!)).toBeLessThan(1e-7);
    // Bins of the cycle start at a rising zero, which is half a cycle off now: within the noise of a bin.
    expect(Math.abs(up.peak.value! + down.trough.value!)).toBeLessThan(0.01);
  },
);

test('the RMS of a clean wave is the root of its mean and harmonics squared (Parseval)', () => {
  const samples = sampleWave(
    waveNamed.harmonics({
      harmonics: [2, 3, 9, 31].map((order) => ({ order, ratio: 0.05, phaseRad: order })),
    }),
    {
      frequencyHz: 60,
      sampleRateHz: rate,
      cycles: 2.7,
      offset: 0.04,
    },
  );
  const { rms, mean, harmonics } = figuresOf(samples);
  const sum = Math.hypot(mean.value!, ...harmonics.map((harmonic) => harmonic.rms));
  expect(Math.abs(rms.value! / sum - 1)).toBeLessThan(1e-9);
});

test('a whole cycle more or less changes no figure of a clean wave', () => {
  const clean = (cycles: number, phase: number): WaveFigures =>
    figuresOf(
      sampleWave(waveNamed.harmonics({}), {
        frequencyHz: 50,
        sampleRateHz: rate,
        cycles,
        startPhaseCycles: phase,
      }),
    );
  const short = clean(2.4, 0.1);
  const long = clean(3.4, 0.7);
  for (const key of ['rms', 'frequencyHz', 'thdPercent', 'fundamental'] as const) {
    expect(Math.abs(long[key].value! / short[key].value! - 1)).toBeLessThan(1e-9);
  }
  // From 1024 points of a cycle that starts elsewhere: half of (π/1024)².
  expect(Math.abs(long.crestFactor.value! / short.crestFactor.value! - 1)).toBeLessThan(1e-5);
});

test('phases are told from a rising zero of the fundamental: order 1 at 0, none outside (−180, 180]', () => {
  for (let phase = 0; phase < 1; phase += 0.07) {
    const samples = sampleWave(
      waveNamed.harmonics({ harmonics: [{ order: 3, ratio: 0.1, phaseRad: Math.PI }] }),
      {
        frequencyHz: 50,
        sampleRateHz: rate,
        cycles: 3.1,
        startPhaseCycles: phase,
      },
    );
    const { harmonics } = figuresOf(samples);
    expect(harmonics[0]!.phaseDeg).toBe(0);
    expect(Math.abs(Math.abs(harmonics[2]!.phaseDeg) - 180)).toBeLessThan(1e-6);
    for (const { phaseDeg } of harmonics) expect(phaseDeg > -180 && phaseDeg <= 180).toBe(true);
  }
});
