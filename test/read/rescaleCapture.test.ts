import { expect, test } from 'vitest';
import type { Capture } from '../../src/read/capture.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { rescaleCapture } from '../../src/read/rescaleCapture.ts';
import { bytesOf } from './layouts/layoutCase.ts';
import { amperes, lines, rows, sampled, timeOf, volts } from './layouts/wave.ts';

const V = sampled(volts);
const A = sampled(amperes);
const scope = readCapture(
  bytesOf(
    lines([
      'Time (s),CH1 (V),CH2 (V),Load (A)',
      ...rows().map((i) => `${timeOf(i).toFixed(4)},${V[i]},${-V[i]!},${A[i]}`),
    ]),
  ),
);
const counts = readCapture(
  bytesOf(
    lines(['Time (s),Codes (counts)', ...rows().map((i) => `${timeOf(i).toFixed(4)},${(i * 37) % 251}`)]),
  ),
);
const scales = (capture: Capture): number[] => capture.channels.map((channel) => channel.scale);

test('rescaleCapture(capture, …) without a name scales the measured channel', () => {
  const scaled = rescaleCapture(scope, {
    scales: [{ channel: null, factor: 200 }],
    inverted: [],
    measured: undefined,
  });
  expect(scales(scaled)).toEqual([200, 1, 1]);
  expect(Array.from(scaled.channels[0].samples)).toEqual(V.map((v) => v * 200));
  expect(
    scales(rescaleCapture(scope, { scales: [{ channel: null, factor: 2 }], inverted: [], measured: 'all' })),
  ).toEqual([2, 2, 1]);
  expect(
    scales(
      rescaleCapture(scope, { scales: [{ channel: null, factor: 2 }], inverted: [], measured: 'CH1-CH2' }),
    ),
  ).toEqual([2, 2, 1]);
  expect(
    scales(rescaleCapture(scope, { scales: [{ channel: null, factor: 2 }], inverted: [], measured: 'CH2' })),
  ).toEqual([1, 2, 1]);
});

test('rescaleCapture(capture, …) scales and inverts channels by name, and leaves the given capture alone', () => {
  const scaled = rescaleCapture(scope, {
    scales: [{ channel: 'Load', factor: 10 }],
    inverted: ['Load', 'CH2'],
    measured: undefined,
  });
  expect(scales(scaled)).toEqual([1, -1, -10]);
  expect(Array.from(scaled.channels[1]!.samples)).toEqual(V);
  expect(scales(scope)).toEqual([1, 1, 1]);
  expect(Array.from(scope.channels[1]!.samples)).toEqual(V.map((v) => -v));
});

test('rescaleCapture(capture, { inPlace }) scales the samples of the given capture, and no other', () => {
  const own = {
    ...scope,
    channels: scope.channels.map((channel) => ({ ...channel, samples: channel.samples.slice() })),
  };
  const rescaling = { scales: [{ channel: 'Load', factor: 10 }], inverted: [], measured: undefined };
  const scaled = rescaleCapture(own as unknown as typeof scope, { ...rescaling, inPlace: true });
  expect(scaled).toEqual(rescaleCapture(scope, rescaling));
  expect(scaled.channels.map(({ samples }, k) => samples === own.channels[k]!.samples)).toEqual([
    true,
    true,
    true,
  ]);
});

test('rescaleCapture(capture, …) makes volts of counts, one count being the step', () => {
  expect(counts.channels[0]).toMatchObject({ quantity: 'other', unit: 'counts' });
  const scaled = rescaleCapture(counts, {
    scales: [{ channel: null, factor: 1.5 }],
    inverted: [],
    measured: undefined,
  });
  expect(scaled.channels[0]).toMatchObject({ quantity: 'voltage', unit: 'V', stepSize: 1.5, scale: 1.5 });
  expect(scaled.notices.map((notice) => notice.code)).not.toContain('counts.unscaled');
});

test('rescaleCapture(capture, …) refuses a name that there is not, and a factor that is none', () => {
  expect(() =>
    rescaleCapture(scope, { scales: [{ channel: 'CH9', factor: 2 }], inverted: [], measured: undefined }),
  ).toThrow(expect.objectContaining({ code: 'channel.unknown' }));
  expect(() =>
    rescaleCapture(scope, { scales: [{ channel: null, factor: 0 }], inverted: [], measured: undefined }),
  ).toThrow(RangeError);
});
