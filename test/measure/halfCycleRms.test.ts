import { expect, test } from 'vitest';
import { type HalfCycleRms, halfCycleRms } from '../../src/measure/envelope.ts';
import { phaseTrack } from '../../src/signal/phaseTrack.ts';
import { roughFundamental } from '../../src/signal/roughFundamental.ts';
import { waveOfRms } from '../../src/synth/changedWaves.ts';
import { course, type EvolvingWave, evolvingWave } from '../../src/synth/evolvingWave.ts';
import type { EvolvingSampling } from '../../src/synth/sampleWave.ts';
import { sineWave } from '../../src/synth/sines.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';
import { recorded } from './recorded.ts';
import { trueHalfCycleRms } from './trueHalfCycleRms.ts';

function envelopeOf(
  wave: EvolvingWave,
  sampling: EvolvingSampling,
  breaksS: readonly number[] = [],
): HalfCycleRms {
  const record = recorded(wave, sampling);
  const omega = roughFundamental(record.samples);
  const breaks = breaksS.map((at) => (at - record.startS) / record.intervalS);
  const envelope = omega === null ? null : halfCycleRms(record, phaseTrack(record.samples, omega, breaks));
  if (envelope === null) throw new Error('no envelope');
  return envelope;
}

/** Worst of |Urms(1/2) / truth − 1| and of |f − truth|, each value against the true cycle of its time. */
function worstErrors(wave: EvolvingWave, envelope: HalfCycleRms, startS: number, durationS: number) {
  const truth = trueHalfCycleRms(wave, startS, durationS);
  let [ratio, hertz] = [0, 0];
  envelope.timeS.forEach((timeS, k) => {
    const cycle = truth.reduce((a, b) => (Math.abs(b.timeS - timeS) < Math.abs(a.timeS - timeS) ? b : a));
    ratio = Math.max(ratio, Math.abs(envelope.rms[k]! / cycle.rms - 1));
    hertz = Math.max(hertz, Math.abs(envelope.frequencyHz[k]! - cycle.frequencyHz));
  });
  return { ratio, hertz, missing: truth.length - envelope.timeS.length };
}

// By the definition of IEC 61000-4-30 one window alone straddles a step at a zero crossing, half a cycle on each side,
// so its value is √((1 + k²)/2). Recomputed from that line.
test.each([
  [0.4, 0.761577],
  [0.7, 0.863134],
  [0.8, 0.905539],
  [0.9, 0.95131],
  [1.1, 1.05119],
  [1.2, 1.104536],
])('a step from 1 to %f at a zero has exactly one mixed value, %f', (k, mixed) => {
  const wave = evolvingWave({
    wave: waveOfRms(sineWave(), 1),
    frequencyHz: 50,
    amplitude: course(1, [{ atS: 0.2, to: k }]),
  });
  const { rms } = envelopeOf(wave, { sampleRateHz: 20_000, durationS: 0.4 }, [0.2]);
  // The zeros are found to a thousandth of a sample, and v² is nothing there; the printed value has six digits.
  const between = rms.filter((x) => Math.abs(x - 1) > 1e-4 && Math.abs(x - k) > 1e-4);
  expect(between.length).toBe(1);
  expect(Math.abs(between[0]! - Math.sqrt((1 + k * k) / 2))).toBeLessThan(1e-4);
  expect(Math.abs(between[0]! - mixed)).toBeLessThan(1e-4);
});

test('a step that goes to nothing has one mixed value too, 1/√2', () => {
  const wave = evolvingWave({
    wave: waveOfRms(sineWave(), 1),
    frequencyHz: 50,
    amplitude: course(1, [{ atS: 0.2, to: 0 }]),
  });
  const { rms } = envelopeOf(wave, { sampleRateHz: 20_000, durationS: 0.4 }, [0.2]);
  const between = rms.filter((x) => Math.abs(x - 1) > 1e-4 && x > 1e-3);
  expect(between.length).toBe(1);
  expect(Math.abs(between[0]! - Math.SQRT1_2)).toBeLessThan(1e-4);
});

test('a step inside the window leaves two mixed values whose squares are the weighted integrals', () => {
  // 30° after a zero: of the window that starts there half a cycle earlier, 1/12 of a cycle less is past.
  const atS = 0.2 + 0.02 / 12;
  const wave = evolvingWave({
    wave: waveOfRms(sineWave(), 1),
    frequencyHz: 50,
    amplitude: course(1, [{ atS, to: 0.8 }]),
  });
  const { rms } = envelopeOf(wave, { sampleRateHz: 100_000, durationS: 0.4 }, [atS]);
  const between = Array.from(rms).filter((x) => Math.abs(x - 1) > 1e-4 && Math.abs(x - 0.8) > 1e-4);
  // ∫ sin² from 0 to 30° over ∫ sin² of a cycle: (π/6 − sin 60°/2) / 2π
  const share = (Math.PI / 6 - Math.sin(Math.PI / 3) / 2) / (2 * Math.PI);
  const expected = [0.5 + share, share].map((before) => Math.sqrt(before + (1 - before) * 0.64));
  expect(between.length).toBe(2);
  // A jump between two samples is a straight line to the integral: v²·36 % of half a sample of 2000 a cycle.
  between.forEach((x, i) => {
    expect(Math.abs(x - expected[i]!)).toBeLessThan(1e-4);
  });
});

test.each(['sine', 'harmonics', 'modified', 'staircase'] as const)(
  '%s: RMS of every cycle at odd rates',
  (shape) => {
    const known = waveOfRms(waveNamed[shape]({ edgeCycles: 0.01 }), 120);
    for (const [frequencyHz, sampleRateHz] of [
      [49.37, 10_000],
      [60.21, 25_000],
      [51.3, 97_000],
    ] as const) {
      const wave = evolvingWave({ wave: known, frequencyHz, phaseCycles: 0.37 });
      const sampling = { sampleRateHz, durationS: 0.3, startS: -0.8 };
      const { ratio, hertz, missing } = worstErrors(wave, envelopeOf(wave, sampling), -0.8, 0.3);
      // An edge of 1 % of a cycle holds two samples at 10 kS/s: the trapezoid rule then leaves 0.1 % of the square.
      expect(ratio).toBeLessThan(shape === 'modified' || shape === 'staircase' ? 1e-3 : 1e-4);
      expect(hertz).toBeLessThan(shape === 'modified' || shape === 'staircase' ? 0.1 : 0.01);
      // At most the cycles that the record's ends cut by a hair.
      expect(missing).toBeLessThan(3);
    }
  },
);

test('the phase follows a frequency that jumps and droops', () => {
  const frequencyHz = course(60, [{ atS: 0.25, to: 58, transient: { by: -1.5, tauS: 0.08 } }]);
  const wave = evolvingWave({ wave: waveOfRms(sineWave(), 120), frequencyHz });
  const sampling = { sampleRateHz: 20_000, durationS: 0.6 };
  const told = worstErrors(wave, envelopeOf(wave, sampling, [0.25]), 0, 0.6);
  const untold = worstErrors(wave, envelopeOf(wave, sampling), 0, 0.6);
  // A cycle across a jump of 6 % has its two halves told from its own sides: 0.3 δf/f is the stated blur.
  expect(told.ratio).toBeLessThan(0.003);
  expect(untold.ratio).toBeLessThan(0.3 * 0.06);
});

test('noise of 2 % leaves the frequency of a cycle at some hundredths of a hertz', () => {
  const wave = evolvingWave({ wave: waveOfRms(sineWave(), 230), frequencyHz: 50 });
  const envelope = envelopeOf(wave, { sampleRateHz: 10_000, durationS: 2, noiseRms: 4.6, seed: 3 });
  const seen = envelope.frequencyHz.filter((_, k) => envelope.seen[k] === 1);
  const rmsError = Math.sqrt(seen.reduce((sum, f) => sum + (f - 50) ** 2, 0) / seen.length);
  // Naive zeros: σ_f = √2·s·f / (2πA)·√(2/3) = 0.18 Hz for one cycle (interpolated zeros in white noise).
  const naive = ((Math.SQRT2 * 4.6 * 50) / (2 * Math.PI * 230 * Math.SQRT2)) * Math.sqrt(2 / 3);
  expect(rmsError).toBeLessThan(naive / 5);
  expect(rmsError).toBeGreaterThan(0);
});

test('a cycle with a hole is left out, and a few missing samples are bridged', () => {
  const wave = evolvingWave({ wave: waveOfRms(sineWave(), 230), frequencyHz: 50 });
  const record = recorded(wave, { sampleRateHz: 10_000, durationS: 0.4 });
  const { samples } = record;
  samples.fill(Number.NaN, 1000, 1003);
  samples.fill(Number.NaN, 2000, 2100);
  const envelope = halfCycleRms(record, phaseTrack(samples, (2 * Math.PI * 50) / 10_000));
  const overHole = Array.from(envelope!.timeS).filter((t) => t > 0.1901 && t < 0.2199);
  expect(overHole).toEqual([]);
  for (const x of envelope!.rms) {
    // A straight line over three samples misses (ωh)² of v² at worst: 0.1 % of one in 70 of a cycle.
    expect(Math.abs(x / 230 - 1)).toBeLessThan(1e-3);
  }
});

test('gain scales the envelope, turning the wave over leaves it, and time moves with the start', () => {
  const wave = evolvingWave({
    wave: waveOfRms(waveNamed.modified({ edgeCycles: 0.01 }), 120),
    frequencyHz: 60,
    amplitude: course(1, [{ atS: 0.1, to: 0.9 }]),
  });
  const record = recorded(wave, { sampleRateHz: 25_000, durationS: 0.3 });
  const zeros = phaseTrack(record.samples, (2 * Math.PI * 60) / 25_000);
  const plain = halfCycleRms(record, zeros)!;
  const turned = halfCycleRms({ ...record, samples: record.samples.map((x) => -2 * x), startS: 5 }, zeros)!;
  plain.rms.forEach((x, k) => {
    // Multiplying by two is exact; the sums round alike.
    expect(turned.rms[k]).toBe(2 * x);
    expect(Math.abs(turned.timeS[k]! - plain.timeS[k]! - 5)).toBeLessThan(1e-12);
  });
});
