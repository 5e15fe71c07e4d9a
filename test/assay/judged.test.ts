import { expect, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import type { AssayOptions } from '../../src/assay/assayOptions.ts';
import type { AssayResult } from '../../src/assay/measureDocument.ts';
import { MeasureError } from '../../src/base/measureError.ts';
import type { Capture, Channel } from '../../src/read/capture.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';

const rate = 20_000;
type Signal = (t: number) => number;

interface Invented {
  readonly volts: Signal;
  /** Absent: no such channel. */
  readonly amperes?: Signal;
  readonly durationS?: number;
  readonly file?: string;
}

const noise = gaussianNumbers(randomNumbers(7));
/** As eight bits over ±half the full scale see it. */
function sampled(signal: Signal, count: number, fullScale: number, noiseRms: number): Float64Array {
  const step = fullScale / 256;
  return Float64Array.from(
    { length: count },
    (_, n) => step * Math.round((signal(n / rate) + noiseRms * noise()) / step),
  );
}

function resultOf(
  { volts, amperes, durationS = 0.1, file = 'wave.csv' }: Invented,
  options: AssayOptions = {},
): AssayResult {
  const count = Math.round(durationS * rate);
  const channel = (name: string, quantity: Channel['quantity'], samples: Float64Array): Channel => ({
    ...{
      name,
      quantity,
      unit: quantity === 'voltage' ? 'V' : 'A',
      scale: 1,
      samples,
      gaps: [],
      stepSize: null,
    },
  });
  const capture: Capture = {
    channels: [
      channel('CH1', 'voltage', sampled(volts, count, 800, 0.5)),
      ...(amperes === undefined ? [] : [channel('CH2', 'current', sampled(amperes, count, 20, 0.03))]),
    ],
    ...{ sampleCount: count, startS: 0, intervalS: 1 / rate, layout: '', notices: [] },
  };
  return assayCapture(capture, { file, sha256: '' }, options)[0]!.result;
}

const sine =
  (rms: number, hertz = 60): Signal =>
  (t) =>
    Math.SQRT2 * rms * Math.sin(2 * Math.PI * hertz * t);
const codes = ({ notices }: AssayResult): readonly string[] => notices.map(({ code }) => code);

test('a load told that the current denies: the measured one stands, with a doubt', () => {
  const steady = { volts: sine(120), amperes: sine(2.15) };
  // 120 V · 2.15 A = 258 W; scope, probe and clamp may be off by some per cent, the method is not.
  const denied = resultOf(steady, { load: '400 W' });
  expect(denied.loadSeen?.from).toBe('measured');
  expect(Math.abs(denied.loadSeen!.watts! / 258 - 1)).toBeLessThan(0.01);
  expect(codes(denied)).toContain('load.differs');
  expect(codes(resultOf(steady, { load: '260 W heater' }))).not.toContain('load.differs');
  expect(codes(resultOf({ ...steady, file: 'unit-400w.csv' }))).toContain('load.differs');
});

test('a load told belongs to the stretch that its current fits', () => {
  const comesOnAt = (atS: number): Invented => ({
    volts: (t) => sine(t < atS ? 120 : 115)(t),
    amperes: (t) => (t < atS ? 0 : sine(2.5)(t)),
    durationS: 0.5,
  });
  const late = resultOf(comesOnAt(0.35), { load: '300 W' });
  expect(late.voltage!.spanS[1]).toBeLessThan(0.36);
  expect(late.loadSeen).toEqual({ from: 'measured', text: 'no load', watts: 0 });
  expect(codes(late)).not.toContain('load.differs');
  const early = resultOf(comesOnAt(0.15), { load: '300 W' });
  expect(Math.abs(early.loadSeen!.watts! / 287.5 - 1)).toBeLessThan(0.01);
  const { amperes: _, ...untold } = comesOnAt(0.35);
  expect(resultOf(untold, { load: '300 W' }).loadSeen).toBeUndefined();
  const { amperes: __, ...told } = comesOnAt(0.15);
  expect(resultOf(told, { load: '300 W' }).loadSeen).toEqual({ from: 'told', text: '300 W', watts: 300 });
});

test('a power on a scale that is doubted is nobody’s load', () => {
  const tiny = { volts: sine(1.2 * 100), amperes: sine(2.15) };
  const result = resultOf(tiny, { load: '260 W', scales: [{ channel: 'CH1', factor: 0.01 }] });
  expect(codes(result)).toContain('scale.suspect');
  expect(result.loadSeen?.from).toBe('told');
});

test('codes counted from zero: the nominal comes from the RMS without DC', () => {
  const result = resultOf({ volts: (t) => 243 + sine(121)(t) });
  // √(121² + 243²) = 271 V, which is an outlet of 277 V to whoever counts the DC.
  expect(result.nominal).toEqual({ voltageV: 120, frequencyHz: 60, inferred: true });
  expect(codes(result)).toContain('dc.large');
  expect(result.findings.filter(({ quantity }) => quantity.endsWith('(V)'))).toEqual([]);
  expect(result.findings.some(({ quantity }) => quantity.startsWith('THD'))).toBe(true);
});

test('no limits where they mean nothing: a doubted scale, or no frequency of the mains', () => {
  const scaled = (factor: number) => resultOf({ volts: sine(120) }, { scales: [{ channel: 'CH1', factor }] });
  expect(scaled(1).findings.length).toBeGreaterThan(0);
  expect(scaled(0.01).findings).toEqual([]);
  expect(codes(scaled(0.5))).toContain('scale.half');
  expect(scaled(0.5).findings).toEqual([]);
  expect(resultOf({ volts: sine(120, 75) }).findings).toEqual([]);
  expect(
    resultOf({ volts: sine(115, 400) }, { nominal: { voltageV: 115, frequencyHz: 400 } }).findings,
  ).toEqual([]);
});

const noisy =
  (signal: Signal, rms: number): Signal =>
  (t) =>
    signal(t) + rms * noise();

test.each([
  ['a direct voltage', (): number => 12, /^a direct voltage, in which nothing alternates$/],
  ['a direct voltage and noise', noisy(() => 12, 6 / 5), /^a direct voltage, in which nothing alternates$/],
  ['noise alone', noisy(() => 0, 20), /^only noise, in which nothing repeats$/],
  [
    'a direct voltage that sags once',
    (t: number) => (t > 0.05 ? 110 : 120),
    /^a direct voltage, on which what moves does not repeat$/,
  ],
  [
    'ripple on a direct voltage',
    (t: number) => 120 + 15 * Math.sin(2 * Math.PI * 100 * t),
    /ripple .* at 100 Hz$/,
  ],
] as const)('%s is measured, not classified, and gets no advice for outlets', (_, volts, reason) => {
  const result = resultOf({ volts });
  expect(result.waveform.kind).toBe('not classified');
  expect(result.waveform.reasons[0]).toMatch(reason);
  expect(codes(result).filter((code) => /^(nominal|scale|frequency|cycles|rate)\./.test(code))).toEqual([]);
  expect([result.nominal, result.findings]).toEqual([null, []]);
});

test.each([100, 534, 1234])(
  'ripple of %d Hz on a clean rail is steady, and none of its crests a stray value',
  (hertz) => {
    const result = resultOf({ volts: (t: number) => 12 + 0.5 * Math.sin(2 * Math.PI * hertz * t) });
    expect(codes(result).filter((code) => /^(span|value|frequency|wave)\./.test(code))).toEqual([]);
  },
);

test.each([
  ['one pulse', (t: number) => (t > 0.03 && t < 0.035 ? 100 : 0)],
  ['a step', (t: number) => (t > 0.05 ? 100 : 0)],
  ['a ramp', (t: number) => 1000 * t],
  [
    'a burst that dies out',
    (t: number) => (t > 0.03 ? 100 * Math.exp((0.03 - t) / 0.004) * Math.sin(4400 * (t - 0.03)) : 0),
  ],
  ['two pulses', (t: number) => ((t > 0.03 && t < 0.035) || (t > 0.04 && t < 0.045) ? 100 : 0)],
  ['one cycle', (t: number) => 170 * Math.sin(2 * Math.PI * 10 * t)],
] as const)('%s is refused: it swings and nothing repeats', (_, volts) => {
  expect(() => resultOf({ volts })).toThrow(MeasureError);
});
