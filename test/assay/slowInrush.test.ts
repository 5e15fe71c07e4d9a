import { expect, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import type { AssayResult } from '../../src/assay/measureDocument.ts';
import type { Capture } from '../../src/read/capture.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';

const rate = 10_000;
const ohms = 190;
const settledW = 230 ** 2 / ohms;

/** 230 V at 50 Hz into a resistor that takes `times` its current at first and comes to rest with `tau`, in cycles. */
function resultOf(load: { fromCycle: number; times: number; tau: number; cycles: number }): AssayResult {
  const { fromCycle, times, tau, cycles } = load;
  const normal = gaussianNumbers(randomNumbers(7));
  const count = (cycles * rate) / 50;
  const at = (n: number): number => (50 * n) / rate;
  const volts = Float64Array.from(
    { length: count },
    (_, n) => Math.SQRT2 * 230 * Math.sin(2 * Math.PI * (at(n) + 0.1)),
  );
  const amperes = volts.map((v, n) => {
    const since = at(n) - fromCycle;
    return (since < 0 ? 0 : (v / ohms) * (1 + (times - 1) * Math.exp(-since / tau))) + 0.01 * normal();
  });
  const samples = volts.map((v) => v + 0.5 * normal());
  const channel = { scale: 1, gaps: [], stepSize: null };
  const capture: Capture = {
    channels: [
      { ...channel, name: 'CH1', quantity: 'voltage', unit: 'V', samples },
      { ...channel, name: 'CH2', quantity: 'current', unit: 'A', samples: amperes },
    ],
    sampleCount: count,
    startS: 0,
    intervalS: 1 / rate,
    layout: '',
    notices: [],
  };
  return assayCapture(capture, { file: 'x.csv', sha256: '' })[0]!.result;
}

/** Of the settled power: the current may still be 5 % over on the stretch that counts as steady. */
const NEARLY = 0.05;

test('a current that comes to rest slowly is the load only where it has: behind a step, and from the first sample on', () => {
  const behindStep = { fromCycle: 9, times: 6, tau: 3, cycles: 30 };
  const fromFirst = { fromCycle: -1, times: 4, tau: 4, cycles: 40 };
  for (const load of [behindStep, fromFirst]) {
    const { power, loadSeen, notices } = resultOf(load);
    expect(Math.abs(power!.activeW.value! / settledW - 1)).toBeLessThan(NEARLY);
    expect(power!.powerFactor.value).toBeGreaterThan(0.999);
    expect(Math.abs(loadSeen!.watts! / settledW - 1)).toBeLessThan(NEARLY);
    expect(notices).toContainEqual(expect.objectContaining({ code: 'span.steady', by: 'current' }));
  }
});

test('a current that comes to rest nowhere is no load', () => {
  // It still falls by a thirtieth a cycle where the record ends.
  const { loadSeen } = resultOf({ fromCycle: 0, times: 8, tau: 20, cycles: 12 });
  expect(loadSeen).toBeUndefined();
});

test('a current that stands still has the whole record', () => {
  const { power, loadSeen } = resultOf({ fromCycle: -1, times: 1, tau: 1, cycles: 20 });
  expect(power!.cyclesUsed).toBeGreaterThan(19);
  expect(Math.abs(loadSeen!.watts! / settledW - 1)).toBeLessThan(0.005);
});
