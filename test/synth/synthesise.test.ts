import { describe, expect, test } from 'vitest';
import { type SynthesisOptions, synthesise } from '../../src/synth/synthesise.ts';
import { type ShapeName, waveNamed } from '../../src/synth/waveNamed.ts';

/** The volts of a file in the layout of nothing but values. */
function volts(options: SynthesisOptions): number[] {
  const { bytes } = synthesise({ ...options, layout: 'values' });
  return new TextDecoder().decode(bytes).trim().split('\n').map(Number);
}

const rms = (values: number[]): number =>
  Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);

describe('synthesise', () => {
  test('by default makes 120 V, 60 Hz, five cycles at 100 kS/s, 8 bits and 1 % noise', () => {
    const { truth } = synthesise({ shape: 'sine' });
    expect(Math.abs(truth.rmsV - 120)).toBeLessThan(1e-10);
    expect(truth.frequencyHz).toBe(60);
    expect(truth.record).toEqual({
      ...{ samples: 8333, sampleRateHz: 100_000, noiseRmsV: 1.2, bits: 8, seed: 1 },
      ...{ layout: 'comma', probeRatio: 1 },
    });
    const values = volts({ shape: 'sine' });
    // 8 bits over ±200 V: steps of 1.5625 V, written with four decimals.
    expect(values.filter((value) => !Number.isInteger(value / 1.5625))).toEqual([]);
    // Noise adds in squares; its mean square is uncertain by √(2/8333) of itself, four of which are 0.1 V².
    expect(Math.abs(rms(values) ** 2 - (120 ** 2 + 1.2 ** 2 + 1.5625 ** 2 / 12))).toBeLessThan(20);
  });

  test('writes what it states: RMS and mean of an unspoilt whole number of cycles', () => {
    for (const shape of Object.keys(waveNamed) as ShapeName[]) {
      const options: SynthesisOptions = { shape, cycles: 6, offsetV: 3, noiseRatio: 0, bits: null };
      const values = volts(options);
      const { truth } = synthesise(options);
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      // Point sampling misplaces each of up to 468 edges by half a sample of 10 000 in six cycles.
      const spread = shape === 'pwm' ? 0.02 : 0.003;
      expect(Math.abs(rms(values) - truth.rmsV), shape).toBeLessThan(spread * 120);
      expect(Math.abs(mean - truth.meanV), shape).toBeLessThan(spread * 120);
    }
  });

  test('takes a peak in place of an RMS', () => {
    const { truth } = synthesise({ shape: 'modified', dutyRatio: 0.5, peakV: 160 });
    expect(truth.peakV).toBe(160);
    expect(Math.abs(truth.rmsV - 160 * Math.SQRT1_2)).toBeLessThan(1e-10);
  });

  test('divides by the probe ratio in the file and not in the truth', () => {
    const options: SynthesisOptions = {
      shape: 'sine',
      bits: null,
      noiseRatio: 0,
      cycles: 6,
      probeRatio: 200,
    };
    // Six whole cycles of 10 000 samples: the RMS is exact but for the seven written digits.
    expect(Math.abs(rms(volts(options)) * 200 - 120)).toBeLessThan(1e-4);
    expect(Math.abs(synthesise(options).truth.rmsV - 120)).toBeLessThan(1e-10);
  });

  test('makes noise of its own where the wave is nothing', () => {
    const { truth } = synthesise({ shape: 'noise', rmsV: 10, noiseRatio: 0.5 });
    expect(truth.record.noiseRmsV).toBe(5);
  });

  test('refuses a probe that gives nothing', () => {
    expect(() => synthesise({ shape: 'sine', probeRatio: 0 })).toThrow(RangeError);
  });

  test('states phases from a rising zero of the fundamental', () => {
    const harmonics = [{ order: 3, ratio: 0.1, phaseRad: Math.PI / 2 }];
    const { truth } = synthesise({ shape: 'harmonics', harmonics });
    expect(truth.harmonics.length).toBe(50);
    expect(truth.harmonics[0]!.phaseDeg).toBe(0);
    expect(Math.abs(truth.harmonics[2]!.percent - 10)).toBeLessThan(1e-12);
    expect(truth.harmonics[2]!.phaseDeg).toBe(90);
    const tilted = synthesise({ shape: 'modified', tiltRatio: 0.1 }).truth;
    expect(tilted.harmonics[0]!.phaseDeg).toBe(0);
  });

  test('has no ratio where there is nothing to divide by', () => {
    const dc = synthesise({ shape: 'dc', rmsV: 12 }).truth;
    expect([dc.rmsV, dc.crestFactor, dc.formFactor]).toEqual([12, 1, 1]);
    expect([dc.frequencyHz, dc.thdPercent, dc.harmonics]).toEqual([null, null, []]);
    const noise = synthesise({ shape: 'noise' }).truth;
    expect([noise.rmsV, noise.crestFactor, noise.formFactor, noise.thdPercent]).toEqual([
      0,
      null,
      null,
      null,
    ]);
  });

  test('gives the same bytes for the same options, others for another seed', () => {
    const bytes = (seed: number): Uint8Array => synthesise({ shape: 'sine', seed }).bytes;
    expect(bytes(4)).toEqual(bytes(4));
    expect(bytes(4)).not.toEqual(bytes(5));
  });
});
