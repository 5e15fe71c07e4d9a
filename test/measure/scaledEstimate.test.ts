import { describe, expect, it } from 'vitest';
import { ASSUMED_INSTRUMENT } from '../../src/measure/doubt/instrument.ts';
import { doubtWave } from '../../src/measure/doubtWave.ts';
import { estimateWave } from '../../src/measure/estimateWave.ts';
import { locateWave } from '../../src/measure/locateWave.ts';
import type { WaveInput } from '../../src/measure/measuredWave.ts';
import { scaledEstimate } from '../../src/measure/scaledEstimate.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';

const RATE = 20_000;

/** Ten cycles and some of 50 Hz, with noise. @param at - of the phase in turns, 0 to 1. */
function input(at: (turns: number) => number, samples = 4_130, noise = 0.4): WaveInput {
  const gaussian = gaussianNumbers(randomNumbers(5));
  return {
    samples: Float64Array.from({ length: samples }, (_, n) => {
      const turns = (50 * n) / RATE + 0.13;
      return at(turns - Math.floor(turns)) + noise * gaussian();
    }),
    intervalS: 1 / RATE,
    startS: 0,
    stepSize: 0.05,
    acCoupled: false,
  };
}

const sine = (turns: number): number => Math.sin(2 * Math.PI * turns);

describe('scaledEstimate', () => {
  // 4 is a power of two: fitting the samples times 4 rounds alike, so that everything must agree.
  it.each([
    ['a sine with a third harmonic', input((t) => 320 * sine(t) + 20 * sine(3 * t) + 3)],
    ['three levels', input((t) => (t < 0.1 || (t > 0.4 && t < 0.6) || t > 0.9 ? 0 : t < 0.5 ? 320 : -320))],
    ['a half-wave, whose peaks are folded', input((t) => Math.max(0, 320 * sine(t)))],
    ['a sine with ripple above the orders', input((t) => 320 * sine(t) + 9 * sine(140.5 * t))],
    ['cycles that differ', input((t) => 320 * sine(t), 4_130, 25)],
    ['a long record, whose fit is folded', input((t) => 320 * sine(t), 70_000)],
    ['DC', input(() => 12, 2_000)],
  ])('gives what fitting the scaled samples gives: %s', (_, filed) => {
    const factor = 4;
    const samples = filed.samples.map((x) => factor * x);
    const scaled = { ...filed, samples, stepSize: factor * filed.stepSize! };
    const chain = { instrument: ASSUMED_INSTRUMENT, scaleSource: 'meter' } as const;
    const once = doubtWave(scaledEstimate(estimateWave(filed, locateWave(filed)), factor, samples), chain);
    const again = doubtWave(estimateWave(scaled, locateWave(scaled)), chain);
    expect(plain(once)).toEqual(plain(again));
  });

  it('leaves the estimate that it was made from as it was', () => {
    const filed = input((t) => 320 * sine(t));
    const estimate = estimateWave(filed, locateWave(filed));
    const before = JSON.stringify(plain(estimate));
    scaledEstimate(
      estimate,
      1.3,
      filed.samples.map((x) => 1.3 * x),
    );
    expect(JSON.stringify(plain(estimate))).toBe(before);
  });
});

/** Everything in it, the residual as its values. */
function plain(value: unknown): unknown {
  if (value instanceof Float64Array) return [...value];
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  if ('stretch' in value) {
    const { length, stretch } = value as { length: number; stretch(from: number, to: number): Float64Array };
    return [...stretch(0, length)];
  }
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, plain(part)]));
}
