import { expect, test } from 'vitest';
import type { Figure } from '../../src/base/figure.ts';
import { randomNumbers } from '../../src/signal/randomNumbers.ts';
import { offsetWave, scaledWave } from '../../src/synth/changedWaves.ts';
import type { KnownWave } from '../../src/synth/knownWave.ts';
import { sineWithHarmonics } from '../../src/synth/sines.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';
import { draws } from '../samples.ts';
import { measured } from './inputOf.ts';

const random = randomNumbers(2024);
const between = (low: number, high: number): number => low + (high - low) * random();
const numberOf = (figure: Figure): number => {
  if (figure.value === null) throw new Error(JSON.stringify(figure.reason));
  return figure.value;
};

/** A 230 V sine with up to twelve harmonics of up to 10 %, falling with their order, none above `highest`. */
function randomSine(highest: number): KnownWave {
  const parts = Array.from({ length: 12 }, () => Math.floor(between(2, Math.min(50, highest) + 1)))
    .filter((order, i, all) => all.indexOf(order) === i)
    .map((order) => ({ order, ratio: between(0, 0.2) / order, phaseRad: between(-3, 3) }));
  return offsetWave(scaledWave(sineWithHarmonics(parts), 325), between(-0.05, 0.05) * 325);
}

test('sine-like waves without noise: 1.3 to 25 cycles, 10 to 200 kS/s, any phase, offset to 5 %', () => {
  for (let run = 0; run < draws(60, 8); run++) {
    const frequencyHz = between(45, 65);
    const sampleRateHz = Math.exp(between(Math.log(10e3), Math.log(run % 6 === 0 ? 200e3 : 40e3)));
    const highest = Math.floor((0.45 * sampleRateHz) / frequencyHz);
    const wave = randomSine(highest);
    // Half of the records are short, where leakage and end effects are worst.
    const cycles = run % 2 === 0 ? between(1.3, 3) : between(1.3, 25);
    const { figures } = measured(wave, { frequencyHz, sampleRateHz, cycles, startPhaseCycles: random() });
    const { truth } = wave;
    // What the method is held to: RMS 0.01 %, frequency 0.2 mHz, THD 0.02 points, harmonics 0.01 points.
    expect(Math.abs(numberOf(figures.rms) / truth.rms - 1)).toBeLessThan(1e-4);
    expect(Math.abs(numberOf(figures.mean) - truth.mean)).toBeLessThan(1e-4 * truth.rms);
    expect(Math.abs(numberOf(figures.frequencyHz) - frequencyHz)).toBeLessThan(2e-4);
    expect(Math.abs(numberOf(figures.thdPercent) - 100 * truth.thdRatio(50))).toBeLessThan(0.02);
    expect(Math.abs(numberOf(figures.crestFactor) / truth.crestFactor() - 1)).toBeLessThan(1e-3);
    expect(Math.abs(numberOf(figures.formFactor) / truth.formFactor() - 1)).toBeLessThan(1e-3);
    const first = truth.harmonic(1);
    for (const { order, percent, phaseDeg } of figures.harmonics) {
      const known = truth.harmonic(order);
      expect(Math.abs(percent - (100 * known.rms) / first.rms)).toBeLessThan(0.01);
      if (known.rms < 0.001 * first.rms) continue;
      const turns = phaseDeg / 360 - (known.phaseRad - order * first.phaseRad) / (2 * Math.PI);
      // Degrees: a tenth of one moves no figure.
      expect(360 * Math.abs(turns - Math.round(turns))).toBeLessThan(0.1);
    }
  }
});

test('waves with jumps at 100 kS/s, from 2.4 cycles up', () => {
  for (let run = 0; run < draws(40, 8); run++) {
    // Half-way edges at rates that don't divide; tops long enough that one sample is under 0.05 % of them.
    const shape = (['modified', 'square', 'staircase', 'triangle'] as const)[run % 4]!;
    const wave = scaledWave(
      waveNamed[shape]({
        dutyRatio: between(0.5, 0.92),
        levels: 5 + 2 * Math.floor(between(0, 7)),
        edgeCycles: shape === 'staircase' ? 0 : 0.002,
      }),
      170,
    );
    const frequencyHz = between(45, 65);
    const { figures } = measured(wave, {
      frequencyHz,
      sampleRateHz: 1e5,
      cycles: between(2.4, 12),
      startPhaseCycles: random(),
    });
    expect(Math.abs(numberOf(figures.rms) / wave.truth.rms - 1)).toBeLessThan(5e-4);
    expect(Math.abs(numberOf(figures.thdPercent) - 100 * wave.truth.thdRatio(50))).toBeLessThan(0.1);
    expect(Math.abs(numberOf(figures.frequencyHz) - frequencyHz)).toBeLessThan(0.02);
  }
});

test('with noise, every error stays within five of the deviations that the fit states of itself', () => {
  for (let run = 0; run < draws(40, 8); run++) {
    const wave = randomSine(50);
    const frequencyHz = between(45, 65);
    const noiseRms = between(0.001, 0.01) * 325;
    const { figures, periodic } = measured(wave, {
      frequencyHz,
      sampleRateHz: between(15e3, 50e3),
      cycles: between(1.5, 10),
      startPhaseCycles: random(),
      noiseRms,
      seed: run,
    });
    const { fit } = periodic!;
    // The stated deviations are the Cramér-Rao bound for the noise seen; that noise is seen right to 5 %.
    expect(Math.abs(fit.residualDeviation / noiseRms - 1)).toBeLessThan(0.2);
    const hertz = fit.deviation.omega / fit.omega;
    expect(Math.abs(numberOf(figures.frequencyHz) / frequencyHz - 1)).toBeLessThan(5 * hertz);
    expect(Math.abs(fit.mean - wave.truth.mean)).toBeLessThan(5 * fit.deviation.mean);
    const amplitude = Math.hypot(fit.deviation.cosine[0]!, fit.deviation.sine[0]!);
    expect(Math.abs(numberOf(figures.fundamental) - wave.truth.fundamentalRms)).toBeLessThan(5 * amplitude);
    // RMS counts the noise in by its definition: √(V² + σ²).
    const rms = Math.hypot(wave.truth.rms, noiseRms);
    expect(Math.abs(numberOf(figures.rms) - rms)).toBeLessThan(
      (5 * noiseRms * Math.SQRT2) / Math.sqrt(fit.count / 2),
    );
  }
});

test('the whole-cycle sum and a direct transform of resampled whole cycles agree with the joint fit', () => {
  const wave = randomSine(40);
  const { figures, samples, periodic } = measured(wave, {
    frequencyHz: 49.83,
    sampleRateHz: 20e3,
    cycles: 4.7,
    startPhaseCycles: 0.3,
  });
  // Slow twin: the fitted frequency only, then the Fourier integral over four cycles by Simpson's rule on a
  // cubic interpolation of the samples.
  const period = periodic!.periodSamples;
  const at = (u: number): number => {
    const n = Math.max(1, Math.min(samples.length - 3, Math.floor(u)));
    const x = u - n;
    const [a, b, c, d] = [samples[n - 1]!, samples[n]!, samples[n + 1]!, samples[n + 2]!];
    return b + 0.5 * x * (c - a + x * (2 * a - 5 * b + 4 * c - d + x * (3 * (b - c) + d - a)));
  };
  const steps = 20_000;
  const integral = (order: number): [number, number] => {
    let [re, im] = [0, 0];
    for (let i = 0; i < steps; i++) {
      const u = 2 + (4 * period * i) / steps;
      re += (at(u) * Math.cos((2 * Math.PI * order * u) / period)) / steps;
      im += (at(u) * Math.sin((2 * Math.PI * order * u) / period)) / steps;
    }
    return [2 * re, 2 * im];
  };
  const fundamental = Math.hypot(...integral(1));
  for (const order of [3, 5, 7]) {
    const percent = (100 * Math.hypot(...integral(order))) / fundamental;
    // The cubic through 400 samples a cycle loses (2π·7/400)⁴ ≈ 1e-4 of an order.
    expect(Math.abs(percent - figures.harmonics[order - 1]!.percent)).toBeLessThan(0.01);
  }
});
