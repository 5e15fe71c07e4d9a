import { expect, test } from 'vitest';
import { judgeWaveformClaim } from '../../../src/judge/claims/judgeClaim.ts';
import { classifyWave } from '../../../src/judge/waveform/classifyWave.ts';
import type { MeasuredWave } from '../../../src/measure/measuredWave.ts';
import { measureWave } from '../../../src/measure/measureWave.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';
import { inputOf } from '../../measure/inputOf.ts';
import { drawsAsked } from '../../samples.ts';

const DRAWS = drawsAsked(60);
const random = randomNumbers(1714);
const normal = gaussianNumbers(randomNumbers(1715));
const between = (low: number, high: number): number => low + (high - low) * random();

function codesOf(wave: MeasuredWave): string[] {
  return wave.figures.notices.map(({ code }) => code);
}

/** A sine of so many codes with harmonics of a known distortion; noise in codes. */
function roundedSine(codes: number, thdPercent: number, noise: number): Float64Array {
  const parts = [3, 5, 7].map((order) => ({ order, size: random() / order, phase: between(-3, 3) }));
  const whole = Math.hypot(...parts.map(({ size }) => size));
  const amplitude = (codes - 1) / 2 + between(-0.4, 0.4);
  const [offset, start] = [between(-0.5, 0.5), between(0, 2 * Math.PI)];
  const perCycle = between(300, 1500);
  return Float64Array.from({ length: Math.round(perCycle * between(2.4, 6)) }, (_, n) => {
    const turn = start + (2 * Math.PI * n) / perCycle;
    const bent = parts.reduce(
      (sum, { order, size, phase }) =>
        sum + (thdPercent / 100) * (size / whole) * Math.sin(order * turn + phase),
      0,
    );
    return 1.6 * Math.round(amplitude * (Math.sin(turn) + bent) + offset + noise * normal());
  });
}

test(`a sine on 6 to 60 codes is never stepped, and its distortion keeps its doubt (${DRAWS} draws of SINEASSAY_DRAWS)`, () => {
  let held = 0;
  let stepped = 0;
  for (let run = 0; run < DRAWS; run++) {
    const thdPercent = between(0, 8);
    const samples = roundedSine(
      6 + Math.floor(55 * random()),
      thdPercent,
      run % 2 === 0 ? 0 : between(0, 0.3),
    );
    const wave = measureWave(inputOf(samples, 50_000));
    const { kind, atTheEdge } = classifyWave(wave);
    if (kind !== 'pure sine' && kind !== 'distorted sine') stepped++;
    if (codesOf(wave).includes('kind.fewCodes')) expect(atTheEdge).toBe(true);
    const thd = wave.figures.thdPercent;
    if (thd.value === null) throw new Error(JSON.stringify(thd.reason));
    const isHeld =
      thd.notAbove === undefined
        ? Math.abs(thd.value - thdPercent) <= thd.uncertainty
        : thdPercent <= thd.notAbove;
    if (isHeld) held++;
  }
  // One in a hundred stands as a staircase of its size would, evenly about zero.
  expect(stepped).toBeLessThanOrEqual(1 + DRAWS / 50);
  expect(held / DRAWS).toBeGreaterThan(0.92);
}, 600_000);

test(`a staircase of 11 to 19 levels is stepped after a converter of 8 to 12 bits (${DRAWS} draws of SINEASSAY_DRAWS)`, () => {
  for (let run = 0; run < DRAWS; run++) {
    const height = 5 + Math.floor(5 * random());
    const perCycle = between(400, 2000);
    const step = (2 * height) / (2 ** (8 + Math.floor(5 * random())) * between(0.5, 0.9));
    const noise = run % 2 === 0 ? 0 : between(0, 0.005) * height;
    const start = random();
    const samples = Float64Array.from({ length: Math.round(perCycle * between(2.4, 6)) }, (_, n) => {
      const level = Math.round(0.9999 * height * Math.sin(2 * Math.PI * (start + n / perCycle)));
      return step * Math.round((level + noise * normal()) / step);
    });
    expect(classifyWave(measureWave(inputOf(samples, 50_000))).kind).toBe('stepped');
  }
}, 600_000);

test('120 V through 1:200 written with one decimal is a sine, and its claim holds at best probably', () => {
  const samples = Float64Array.from(
    { length: 4200 },
    (_, n) => 200 * Number(((120 * Math.SQRT2 * Math.sin((2 * Math.PI * n) / 833.3 + 1)) / 200).toFixed(1)),
  );
  const wave = measureWave(inputOf(samples, 50_000));
  expect(new Set(samples).size).toBe(17);
  expect(Math.abs(wave.stepSize! - 20)).toBeLessThan(1e-9);
  expect(codesOf(wave)).toContain('kind.fewCodes');
  const waveform = classifyWave(wave);
  expect(waveform).toMatchObject({ kind: 'pure sine', levels: 0, atTheEdge: true });
  expect(waveform.reasons.join('; ')).toMatch(/so few codes that a staircase/);
  const claim = { text: 'pure sine', quantity: 'waveform', kind: 'pure sine' } as const;
  expect(
    judgeWaveformClaim(claim, { figures: wave.figures, waveform, rule: 'guarded', sineThdPercent: 5 })
      .outcome,
  ).toBe('conditional pass');
  // A staircase of the same seventeen levels, switched to the nearest, has the height of its sine.
  const staircase = samples.map((_, n) => 20 * Math.round(7.9999 * Math.sin((2 * Math.PI * n) / 833.3 + 1)));
  expect(classifyWave(measureWave(inputOf(staircase, 50_000)))).toMatchObject({
    kind: 'stepped',
    levels: 17,
  });
});

test('a sine 0.004 codes off the height of a staircase is told from it, by when it goes from code to code', () => {
  const of = (amplitude: number, offset: number): Float64Array =>
    Float64Array.from(
      { length: 3500 },
      (_, n) => 54.56 * Math.round(amplitude * Math.sin((2 * Math.PI * n) / 418.13 + 1) + offset),
    );
  expect(classifyWave(measureWave(inputOf(of(3.004, 0.003), 25_000))).kind).toBe('pure sine');
  expect(classifyWave(measureWave(inputOf(of(2.9999, 0), 25_000)))).toMatchObject({
    kind: 'stepped',
    levels: 7,
  });
});
