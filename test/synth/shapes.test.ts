import { describe, expect, test } from 'vitest';
import type { KnownWave } from '../../src/synth/knownWave.ts';
import { shapes } from './shapes.ts';

// The slow twin: sums over the midpoints of N equal parts of a cycle. Its own error is that of the midpoint
// rule: up to (sum of the jumps)/(2N) where the wave jumps, far less where it does not.
const N = 50_000;

function sumOverCycle(wave: KnownWave, term: (value: number, phase: number) => number): number {
  let sum = 0;
  for (let i = 0; i < N; i++) {
    const phase = (i + 0.5) / N;
    sum += term(wave.at(phase), phase);
  }
  return sum / N;
}

// 42 edges of height 2 in the pulse-width modulation, each misplaced by up to half a part.
const tolerance = (42 * 2 * 0.5) / N;

describe.each(shapes)('%s: its truth against a plain sum over its values', (_, wave) => {
  test('rms, mean and mean of |v|', () => {
    const rms = Math.sqrt(sumOverCycle(wave, (value) => value * value));
    expect(Math.abs(wave.truth.rms - rms)).toBeLessThan(tolerance);
    expect(Math.abs(wave.truth.mean - sumOverCycle(wave, (value) => value))).toBeLessThan(tolerance);
    for (const level of [0, 0.25, -0.5]) {
      const distance = sumOverCycle(wave, (value) => Math.abs(value - level));
      expect(Math.abs(wave.truth.meanAbsoluteAbout(level) - distance)).toBeLessThan(tolerance);
    }
  });

  test('peak and trough', () => {
    let peak = -Infinity;
    let trough = Infinity;
    sumOverCycle(wave, (value) => {
      peak = Math.max(peak, value);
      trough = Math.min(trough, value);
      return 0;
    });
    // A part of a cycle away from its crest a wave has moved by at most slope · part: the ringing's is 60.
    expect(wave.truth.peak).toBeGreaterThanOrEqual(peak - 1e-12);
    expect(wave.truth.peak - peak).toBeLessThan(60 / N);
    expect(wave.truth.trough).toBeLessThanOrEqual(trough + 1e-12);
    expect(trough - wave.truth.trough).toBeLessThan(60 / N);
  });

  test('harmonics, size and phase', () => {
    for (const order of [1, 2, 3, 4, 5, 7, 21, 41, 47, 50]) {
      const cosine = 2 * sumOverCycle(wave, (value, phase) => value * Math.cos(2 * Math.PI * order * phase));
      const sine = 2 * sumOverCycle(wave, (value, phase) => value * Math.sin(2 * Math.PI * order * phase));
      const { rms, phaseRad } = wave.truth.harmonic(order);
      expect(Math.abs(Math.SQRT2 * rms * Math.sin(phaseRad) - cosine)).toBeLessThan(2 * tolerance);
      expect(Math.abs(Math.SQRT2 * rms * Math.cos(phaseRad) - sine)).toBeLessThan(2 * tolerance);
    }
  });

  test('repeats every cycle', () => {
    for (const phase of [0.013, 0.21, 0.377, 0.6, 0.92]) {
      expect(Math.abs(wave.at(phase + 3) - wave.at(phase))).toBeLessThan(1e-11);
      expect(Math.abs(wave.at(phase - 4) - wave.at(phase))).toBeLessThan(1e-11);
    }
  });
});
