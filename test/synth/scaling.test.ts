import { describe, expect, test } from 'vitest';
import { offsetWave, scaledWave, waveOfRms } from '../../src/synth/changedWaves.ts';
import { shapes } from './shapes.ts';

// A few roundings of double precision, relative to values of a few hundred.
const ROUNDING = 1e-11;

describe.each(shapes)('%s', (_, wave) => {
  test('waveOfRms has that RMS and leaves every ratio alone', () => {
    const { truth } = waveOfRms(wave, 120);
    expect(Math.abs(truth.rms - 120)).toBeLessThan(ROUNDING);
    expect(Math.abs(truth.crestFactor() - wave.truth.crestFactor())).toBeLessThan(ROUNDING);
    expect(Math.abs(truth.formFactor() - wave.truth.formFactor())).toBeLessThan(ROUNDING);
    expect(Math.abs(truth.harmonic(3).phaseRad - wave.truth.harmonic(3).phaseRad)).toBeLessThan(ROUNDING);
  });

  test('scaledWave scales the wave and its figures', () => {
    const scaled = scaledWave(wave, 7);
    expect(scaled.at(0.31)).toBe(7 * wave.at(0.31));
    expect(scaled.truth.peak).toBe(7 * wave.truth.peak);
    expect(scaled.truth.harmonic(5).rms).toBe(7 * wave.truth.harmonic(5).rms);
    expect(() => scaledWave(wave, 0)).toThrow(RangeError);
  });

  test('offsetWave moves the mean and leaves the harmonics alone', () => {
    const { truth } = offsetWave(wave, 0.3);
    expect(Math.abs(truth.mean - wave.truth.mean - 0.3)).toBeLessThan(ROUNDING);
    const variance = (of: typeof truth) => of.rms ** 2 - of.mean ** 2;
    expect(Math.abs(variance(truth) - variance(wave.truth))).toBeLessThan(ROUNDING);
    expect(truth.peak).toBe(wave.truth.peak + 0.3);
    expect(truth.harmonic(3)).toEqual(wave.truth.harmonic(3));
    expect(truth.meanAbsoluteAbout(0.3)).toBe(wave.truth.meanAbsoluteAbout(0));
  });
});
