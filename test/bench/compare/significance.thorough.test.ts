import { expect, test } from 'vitest';
import type { Assay } from '../../../src/assay/assay.ts';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import { compareCaptures } from '../../../src/bench/compare/compareCaptures.ts';
import { isSame } from '../../../src/bench/compare/differenceOf.ts';
import type { Capture } from '../../../src/read/capture.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';

const random = randomNumbers(71);
const normal = gaussianNumbers(randomNumbers(72));
const between = (low: number, high: number): number => low + (high - low) * random();

/** Half-widths, and errors are drawn from just these. */
const known = { gainPercent: 1.5, probePercent: 1, offsetV: 0.8, timeBasePpm: 50, distortionPercent: 0.2 };
interface Errors {
  readonly gain: number;
  readonly offset: number;
  readonly clock: number;
}
const instrument = (): Errors => ({
  gain: (1 + between(-0.015, 0.015)) * (1 + between(-0.01, 0.01)),
  offset: between(-0.8, 0.8),
  clock: 1 + between(-50e-6, 50e-6),
});

interface Wave {
  readonly rms: number;
  readonly frequencyHz: number;
  readonly thirdPercent: number;
}

const rate = 6_000;
/** A capture of a wave through an instrument: 12 bits, noise, and a third harmonic of the scope's own. */
function captured({ rms, frequencyHz, thirdPercent }: Wave, { gain, offset, clock }: Errors): Assay {
  const peak = Math.SQRT2 * rms;
  const start = between(0, 2 * Math.PI);
  const own = { size: between(0, 0.002), phase: between(-Math.PI, Math.PI) };
  const count = Math.round((between(4, 7) * rate) / frequencyHz);
  const step = 440 / 2 ** 12;
  const samples = Float64Array.from({ length: count }, (_, n) => {
    const phase = start + (2 * Math.PI * frequencyHz * n) / (rate * clock);
    const third = (thirdPercent / 100) * Math.sin(3 * phase) + own.size * Math.sin(3 * phase + own.phase);
    return step * Math.round((gain * peak * (Math.sin(phase) + third) + offset + 0.7 * normal()) / step);
  });
  const capture: Capture = {
    channels: [{ name: 'CH1', quantity: 'voltage', unit: 'V', scale: 1, samples, gaps: [], stepSize: step }],
    ...{ sampleCount: count, startS: 0, intervalS: 1 / rate, layout: 'made', notices: [] },
  };
  return assayCapture(capture, { file: 'made.csv', sha256: '0' }, { instrument: known })[0]!;
}

const asked = [
  'voltage.rmsV',
  'voltage.frequencyHz',
  'voltage.crestFactor',
  'voltage.thdPercent',
  'voltage.thdNoisePercent',
  'voltage.formFactor',
  'voltage.deviationFactorPercent',
  'voltage.meanV',
] as const;
const PAIRS = 120;

type Counted = (typeof asked)[number] | 'any';

/** How often each figure is called different, and how often the two as a whole, of PAIRS pairs. */
function calledDifferent(
  waves: () => readonly [Wave, Wave],
  sameInstrument: boolean,
): Readonly<Record<Counted, number>> {
  const counts = Object.fromEntries([...asked, 'any'].map((key) => [key, 0])) as Record<Counted, number>;
  for (let pair = 0; pair < PAIRS; pair++) {
    const [a, b] = waves();
    const first = instrument();
    const sides = [captured(a, first), captured(b, sameInstrument ? first : instrument())] as const;
    const compared = compareCaptures(sides[0], sides[1], { sameInstrument });
    const { differences } = compared;
    if (!isSame(compared)) counts.any++;
    for (const key of asked) {
      if (differences.find((difference) => difference.key === key)?.significant) counts[key]++;
    }
  }
  return counts;
}

const wave = (): Wave => ({
  rms: between(110, 125),
  frequencyHz: between(58, 62),
  thirdPercent: between(1.5, 5),
});

/**
 * At 95.45 % coverage one in twenty-two is called different though nothing changed: 5.5 of 120, and by the binomial
 * law not above 5.5 + 3 · √(120 · 0.0455 · 0.9545) = 12.3 in 998 of 1000 trials.
 */
const most = 12;

test.each([false, true])(
  'of the same wave one pair in twenty at most is called different (one instrument: %s)',
  (sameInstrument) => {
    const counts = calledDifferent(() => {
      const one = wave();
      return [one, one];
    }, sameInstrument);
    expect(Object.entries(counts).filter(([, count]) => count > most)).toEqual([]);
  },
);

test('through one instrument half a per cent of volts is found, which two instruments hide', () => {
  const sagging = (): readonly [Wave, Wave] => {
    const one = wave();
    return [one, { ...one, rms: 0.995 * one.rms }];
  };
  expect(calledDifferent(sagging, true)['voltage.rmsV']).toBeGreaterThan(0.95 * PAIRS);
  expect(calledDifferent(sagging, false)['voltage.rmsV']).toBeLessThan(0.2 * PAIRS);
});

test('a frequency and a distortion that moved by several uncertainties are found', () => {
  const moved = calledDifferent(() => {
    const one = wave();
    return [one, { ...one, frequencyHz: one.frequencyHz + 0.1, thirdPercent: one.thirdPercent + 1 }];
  }, false);
  expect(moved['voltage.frequencyHz']).toBeGreaterThan(0.95 * PAIRS);
  expect(moved['voltage.thdPercent']).toBeGreaterThan(0.95 * PAIRS);
});
