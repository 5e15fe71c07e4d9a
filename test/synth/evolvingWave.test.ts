import { expect, test } from 'vitest';
import { course, evolvingWave } from '../../src/synth/evolvingWave.ts';
import { sampleEvolvingWave, sampleWave } from '../../src/synth/sampleWave.ts';
import { sineWave } from '../../src/synth/sines.ts';
import { modifiedSine } from '../../src/synth/steppedWaves.ts';

const ringing = course(50, [
  { atS: 0.1, to: 49, transient: { by: -3, tauS: 0.05 } },
  { atS: 0.4, to: 50.5, transient: { by: 2, tauS: 0.1, ringHz: 7 } },
]);

test('the integral of a course is that of its values', () => {
  // Slow twin: the midpoint rule. Steps of 3 µs leave up to 3 Hz · 3 µs / 2 at each jump, and less elsewhere.
  const [from, to, steps] = [-0.2, 1, 4e5];
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += ringing.at(from + ((i + 0.5) * (to - from)) / steps);
  expect(Math.abs((sum * (to - from)) / steps - ringing.integral(from, to))).toBeLessThan(1e-5);
  expect(ringing.integral(to, from)).toBe(-ringing.integral(from, to));
});

test('a course settles as e^(−t/τ) says', () => {
  expect(ringing.at(0.1 - 1e-12)).toBe(50);
  expect(ringing.at(0.1)).toBe(46);
  // 49 − 3/e after one time constant; rounding of 0.1 + 0.05 apart.
  expect(Math.abs(ringing.at(0.15) - (49 - 3 / Math.E))).toBeLessThan(1e-12);
});

test('a wave that does not change is the plain wave', () => {
  const wave = modifiedSine({ dutyRatio: 0.6, edgeCycles: 0.01 });
  const evolving = evolvingWave({ wave, frequencyHz: 50, phaseCycles: 0.25 });
  const samples = sampleEvolvingWave(evolving, {
    sampleRateHz: 10_000,
    durationS: 0.1,
    noiseRms: 0.01,
    seed: 7,
  });
  const plain = sampleWave(wave, {
    ...{ frequencyHz: 50, sampleRateHz: 10_000, cycles: 5, startPhaseCycles: 0.25, noiseRms: 0.01, seed: 7 },
  });
  // The phase is summed in another order: 1e-15 of a cycle on an edge of a hundredth of one.
  samples.forEach((x, n) => {
    expect(Math.abs(x - plain[n]!)).toBeLessThan(1e-9);
  });
});

test('phase, size and shape follow frequency, amplitude, takeovers and breaks', () => {
  const wave = evolvingWave({
    wave: sineWave(),
    frequencyHz: ringing,
    amplitude: course(325, [{ atS: 0.2, to: 300 }]),
    takeovers: [{ atS: 0.5, aheadCycles: 0.1, wave: modifiedSine({ dutyRatio: 0.5 }) }],
    breaks: [{ fromS: 0.49, toS: 0.5 }],
  });
  expect(wave.at(0.1)).toBe(325 * sineWave().at(5));
  expect(wave.phaseCyclesAt(0.3) - wave.phaseCyclesAt(0.1)).toBe(
    ringing.integral(0, 0.3) - ringing.integral(0, 0.1),
  );
  expect(wave.rmsAt(0.3)).toBe(300 * Math.SQRT1_2);
  expect(wave.at(0.495)).toBe(0);
  expect(wave.rmsAt(0.495)).toBe(0);
  expect([-300, 0, 300]).toContain(wave.at(0.505));
  expect(wave.rmsAt(0.505)).toBe(300 * Math.SQRT1_2);
  expect(wave.frequencyHzAt(0.1)).toBe(46);
});
