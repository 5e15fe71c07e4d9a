import { expect, test } from 'vitest';
import { readCapture } from '../../src/read/readCapture.ts';
import { bytesOf } from './layouts/layoutCase.ts';
import { lines, rows, sampled, timeOf, volts } from './layouts/wave.ts';

const V = sampled(volts);
const capture = readCapture(
  bytesOf(
    lines([
      'Acquisition mode,Peak detect',
      'Coupling,AC,DC',
      'Probe,100X,1:10',
      'Resolution,8 bits',
      'Vertical resolution,0.25 V',
      'Time (s),CH1 (V),CH2 (V)',
      ...rows().map((i) => `${timeOf(i).toFixed(4)},${V[i]},${V[i]}`),
    ]),
  ),
);

test('readCapture(bytes) hands on how the instrument was set', () => {
  expect(capture.acquisition).toBe('peak detect');
  expect(capture.channels.map((channel) => channel.coupling)).toEqual(['AC', 'DC']);
  expect(capture.channels.map((channel) => channel.probeRatio)).toEqual([100, 10]);
  expect(capture.channels.map((channel) => channel.bits)).toEqual([8, 8]);
  expect(capture.channels.map((channel) => channel.stepSize)).toEqual([0.25, 0.25]);
});

test('readCapture(bytes) does not apply a probe ratio: the file holds volts already', () => {
  expect(Array.from(capture.channels[0].samples)).toEqual(V);
});
