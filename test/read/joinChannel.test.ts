import { expect, test } from 'vitest';
import type { Capture, Channel, Quantity } from '../../src/read/capture.ts';
import { asCurrent, fileAndChannel, joinChannel } from '../../src/read/joinCurrent.ts';

const channel = (name: string, quantity: Quantity, unit: string, count: number): Channel => ({
  name,
  quantity,
  unit,
  scale: 1,
  samples: Float64Array.from({ length: count }, (_, n) => n),
  gaps: [],
  stepSize: null,
});
const capture = (only: Channel, startS = -0.02, intervalS = 2e-5): Capture => ({
  channels: [only],
  sampleCount: only.samples.length,
  startS,
  intervalS,
  layout: '',
  notices: [],
});
const outlet = capture(channel('CH1', 'voltage', 'V', 1000));
const clamp = channel('CH2', 'current', 'A', 1000);
const refused = (run: () => unknown): unknown => {
  try {
    return run();
  } catch (error) {
    return error;
  }
};

test('joinChannel(capture, other, channel) puts it last, on the time base of the capture', () => {
  const joined = joinChannel(outlet, capture(clamp), clamp);
  expect(joined.channels.map(({ name }) => name)).toEqual(['CH1', 'CH2']);
  expect(joined.channels[1]!.samples).toBe(clamp.samples);
  expect(joined.startS).toBe(outlet.startS);
  expect(outlet.channels.length).toBe(1);
});

test('a name that is taken gets a number behind it', () => {
  const same = channel('CH1', 'current', 'A', 1000);
  expect(joinChannel(outlet, capture(same), same).channels.map(({ name }) => name)).toEqual([
    'CH1',
    'CH1 (2)',
  ]);
});

test('stamps may differ by a quarter of an interval from the first sample to the last', () => {
  const near = [capture(clamp, -0.02 + 4e-6), capture(clamp, -0.02, 2e-5 * (1 + 2e-4))];
  for (const other of near) expect(joinChannel(outlet, other, clamp).channels.length).toBe(2);
});

test('what disagrees is said: count, start, interval, each and together', () => {
  const short = channel('CH2', 'current', 'A', 999);
  expect(refused(() => joinChannel(outlet, capture(short), short))).toMatchObject({
    code: 'channels.disagree',
    facts: { channel: 'CH2', differences: [{ of: 'sampleCount', values: [1000, 999] }] },
  });
  expect(refused(() => joinChannel(outlet, capture(clamp, -0.02 + 6e-6), clamp))).toMatchObject({
    code: 'channels.disagree',
    facts: { differences: [{ of: 'startS', values: [-0.02, -0.02 + 6e-6] }] },
  });
  expect(refused(() => joinChannel(outlet, capture(clamp, -0.02, 2e-5 * (1 + 3e-4)), clamp))).toMatchObject({
    code: 'channels.disagree',
    facts: { differences: [{ of: 'intervalS', values: [2e-5, 2e-5 * (1 + 3e-4)] }] },
  });
  expect(refused(() => joinChannel(outlet, capture(short, 0, 1e-3), short))).toMatchObject({
    facts: { differences: [{ of: 'sampleCount' }, { of: 'startS' }, { of: 'intervalS' }] },
  });
});

test('asCurrent(channel) takes amperes as they are, and volts or counts as a clamp gives them', () => {
  expect(asCurrent(clamp, false)).toEqual({ channel: clamp, notices: [] });
  const volts = channel('CH2', 'voltage', 'V', 10);
  const scaled = asCurrent(volts, true);
  expect(scaled.channel).toMatchObject({ quantity: 'current', unit: 'A' });
  expect(scaled.notices).toEqual([]);
  expect(asCurrent(volts, false).notices.map(({ code }) => code)).toEqual(['current.scaleAssumed']);
  expect(asCurrent(channel('CH2', 'other', 'counts', 10), false).notices).toEqual([
    { code: 'current.scaleAssumed', channel: 'CH2', unit: 'counts' },
  ]);
  expect(refused(() => asCurrent(channel('P', 'other', 'W', 10), false))).toMatchObject({
    code: 'channel.unmeasurable',
    problem: 'channel.unmeasurable.current',
    facts: { channel: 'P', unit: 'W' },
  });
});

test.each([
  ['ch2.csv:Clamp', 'ch2.csv', 'Clamp'],
  ['ch2.csv', 'ch2.csv', null],
  ['ch2.csv:', 'ch2.csv', null],
  ['D:\\evening\\ch2.csv', 'D:\\evening\\ch2.csv', null],
  ['D:/evening/ch2.csv: CH 2', 'D:/evening/ch2.csv', 'CH 2'],
])('fileAndChannel(%j)', (text, file, name) => {
  expect(fileAndChannel(text)).toEqual({ file, channel: name });
});
