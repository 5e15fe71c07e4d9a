import { expect, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import type { AssayOptions } from '../../src/assay/assayOptions.ts';
import type { AssayResult } from '../../src/assay/measureDocument.ts';
import type { Capture, Channel } from '../../src/read/capture.ts';
import { scaledWave } from '../../src/synth/changedWaves.ts';
import { sampleWave } from '../../src/synth/sampleWave.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';

const rate = 20_000;
const channel = (name: string, quantity: Channel['quantity'], samples: Float64Array): Channel => ({
  name,
  quantity,
  unit: quantity === 'current' ? 'A' : 'V',
  scale: 1,
  samples,
  gaps: [],
  stepSize: null,
});
const sine = (peak: number, phaseDeg: number, noiseRms = 0): Float64Array =>
  sampleWave(scaledWave(waveNamed.sine({}), peak), {
    frequencyHz: 50,
    sampleRateHz: rate,
    cycles: 5.3,
    startPhaseCycles: 0.2 + phaseDeg / 360,
    noiseRms,
  });
const resultOf = (channels: [Channel, ...Channel[]], options: AssayOptions = {}): AssayResult => {
  const capture: Capture = {
    channels,
    sampleCount: channels[0].samples.length,
    startS: 0,
    intervalS: 1 / rate,
    layout: '',
    notices: [],
  };
  return assayCapture(capture, { file: 'x.csv', sha256: '' }, options)[0]!.result;
};
const volts = channel('V', 'voltage', sine(325, 0));

test('a current that lags by 30°: P = V·I·cos 30°, and its own figures stand beside the voltage', () => {
  const { power, current, loadKind, voltage } = resultOf([volts, channel('I', 'current', sine(10, -30))]);
  const apparent = (325 * 10) / 2;
  expect(Math.abs(power!.activeW.value! / (apparent * Math.cos(Math.PI / 6)) - 1)).toBeLessThan(1e-9);
  expect(Math.abs(power!.fundamentalReactiveVar.value! / (apparent / 2) - 1)).toBeLessThan(1e-9);
  expect(power!.channel).toBe('I');
  expect(Math.abs(current!.rmsA.value! - 10 / Math.SQRT2)).toBeLessThan(1e-9);
  expect(loadKind!.kind).toBe('inductive');
  expect(voltage!.rmsV).not.toHaveProperty('budget');
  expect(power!.activeW).not.toHaveProperty('budget');
});

test('a delay of the clamp is told by --skew and taken out', () => {
  // 30° of 20 ms.
  const skews = [{ channel: 'I', seconds: 0.02 / 12 }];
  const { power } = resultOf([volts, channel('I', 'current', sine(10, -30))], { skews });
  expect(Math.abs(power!.displacementDeg.value!)).toBeLessThan(1e-6);
});

test('a clamp that was saved as volts is a current when named, amperes by its scale', () => {
  const options = { current: 'CH2', scales: [{ channel: 'CH2', factor: 10 }] };
  const { current, power } = resultOf([volts, channel('CH2', 'voltage', sine(1, 0))], options);
  expect(Math.abs(current!.rmsA.value! - 10 / Math.SQRT2)).toBeLessThan(1e-9);
  expect(Math.abs(power!.powerFactor.value! - 1)).toBeLessThan(1e-9);
});

test('with nothing connected the power stands and the current has no figures', () => {
  const idle = volts.samples.map((_, n) => 1e-3 * Math.sin(n / 900));
  const { power, current, notices } = resultOf([volts, channel('I', 'current', idle)]);
  expect(Math.abs(power!.activeW.value!)).toBeLessThan(1);
  expect(current).toBeUndefined();
  expect(notices.map(({ code }) => code)).toContain('current.noPeriod');
});

test('three phases: each voltage goes with the current of its rank', () => {
  const channels: [Channel, ...Channel[]] = [
    volts,
    channel('V2', 'voltage', sine(320, 120)),
    channel('I1', 'current', sine(10, 0)),
    channel('I2', 'current', sine(5, 120)),
  ];
  const { power } = resultOf(channels, { voltage: 'V2' });
  expect(power!.channel).toBe('I2');
  expect(Math.abs(power!.activeW.value! / ((320 * 5) / 2) - 1)).toBeLessThan(1e-9);
});

test('a DC input gives its power, ripple and the conversion efficiency', () => {
  const direct = (name: string, quantity: Channel['quantity'], mean: number, ripple: number): Channel =>
    channel(
      name,
      quantity,
      volts.samples.map((_, n) => mean + ripple * Math.sin((2 * Math.PI * 100 * n) / rate)),
    );
  const { input, power } = resultOf(
    [
      volts,
      channel('I', 'current', sine(10, 0)),
      direct('BAT', 'voltage', 25, 0.5),
      direct('IBAT', 'current', 70, 20),
    ],
    {
      directInput: { voltage: 'BAT', current: 'IBAT' },
      voltage: 'V',
      current: 'I',
    },
  );
  // Mean of the product: 25·70 + 0.5·20/2.
  expect(Math.abs(input!.activeW.value! - 1755)).toBeLessThan(0.01);
  expect(Math.abs(input!.rippleV.value! - 0.5 / Math.SQRT2)).toBeLessThan(1e-3);
  expect(
    Math.abs(input!.conversionEfficiencyPercent!.value! - (100 * power!.activeW.value!) / 1755),
  ).toBeLessThan(0.01);
});

test('the difference of two legs carries the doubt of both probes, each for its own part', () => {
  const legs: [Channel, Channel] = [
    channel('L1', 'voltage', sine(170, 0)),
    channel('L2', 'voltage', sine(170, 180)),
  ];
  const capture: Capture = {
    channels: legs,
    sampleCount: legs[0].samples.length,
    startS: 0,
    intervalS: 1 / rate,
    layout: '',
    notices: [],
  };
  const { result, budgets } = assayCapture(capture, { file: 'x.csv', sha256: '' }, { voltage: 'L1-L2' })[0]!;
  expect(Math.abs(result.voltage!.rmsV.value! - 340 / Math.SQRT2)).toBeLessThan(1e-6);
  const { components, combinedStandardUncertainty } = budgets.find(({ figure }) => figure === 'RMS')!.budget;
  expect(components.map(({ source }) => source)).toContain('vertical gain of the second channel');
  // Two equal legs: each gain and ratio counts for half, so the whole is 1/√2 of one channel's √(3² + 2²) / √3 %.
  const one = ((Math.hypot(3, 2) / Math.sqrt(3)) * (340 / Math.SQRT2)) / 100;
  expect(Math.abs(combinedStandardUncertainty / (one / Math.SQRT2) - 1)).toBeLessThan(0.01);
});
