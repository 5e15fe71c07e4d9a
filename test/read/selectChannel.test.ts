import { expect, test } from 'vitest';
import type { Capture, Channel, Quantity } from '../../src/read/capture.ts';
import { selectVoltageChannels } from '../../src/read/selectChannel.ts';

const channel = (name: string, quantity: Quantity, samples: number[]): Channel => ({
  name,
  quantity,
  unit: { voltage: 'V', current: 'A', other: 'W' }[quantity],
  scale: 1,
  samples: Float64Array.from(samples),
  gaps: samples.flatMap((sample, i) => (Number.isNaN(sample) ? [{ from: i, to: i + 1 }] : [])),
  stepSize: null,
});
const capture = (...channels: [Channel, ...Channel[]]): Capture => ({
  channels,
  sampleCount: channels[0].samples.length,
  startS: 0,
  intervalS: 1,
  layout: '',
  notices: [],
});
const scope = capture(
  channel('Load', 'current', [1, 2, 3, 4]),
  channel('CH1', 'voltage', [10, Number.NaN, 30, 40]),
  channel('CH2', 'voltage', [1, 2, Number.NaN, 4]),
  channel('P', 'other', [0, 0, 0, 0]),
);
const names = (selected: { channels: readonly Channel[] }): string[] =>
  selected.channels.map(({ name }) => name);

test('selectVoltageChannels(capture) takes the first voltage and names the others', () => {
  const selected = selectVoltageChannels(scope);
  expect(names(selected)).toEqual(['CH1']);
  expect(selected.notices).toEqual([{ code: 'channels.others', first: 'CH1', unit: 'V', others: ['CH2'] }]);
});

test('selectVoltageChannels(capture, name) takes that channel, whatever the case of its letters', () => {
  expect(names(selectVoltageChannels(scope, 'CH2'))).toEqual(['CH2']);
  expect(names(selectVoltageChannels(scope, 'ch2'))).toEqual(['CH2']);
});

test('selectVoltageChannels(capture, "all") takes every voltage, or every current where there are only those', () => {
  expect(names(selectVoltageChannels(scope, 'all'))).toEqual(['CH1', 'CH2']);
  const clamps = capture(channel('I1', 'current', [1]), channel('I2', 'current', [2]));
  expect(names(selectVoltageChannels(clamps, 'all'))).toEqual(['I1', 'I2']);
});

test('selectVoltageChannels(capture, "A-B") takes the difference, missing where either is', () => {
  const [difference] = selectVoltageChannels(scope, 'CH1-CH2').channels;
  expect(difference!.name).toBe('CH1-CH2');
  expect(Array.from(difference!.samples)).toEqual([9, Number.NaN, Number.NaN, 36]);
  expect(difference!.gaps).toEqual([{ from: 1, to: 3 }]);
});

test('selectVoltageChannels(capture, "A-B") takes a channel of that very name first', () => {
  const named = capture(
    channel('L-N', 'voltage', [7]),
    channel('L', 'voltage', [5]),
    channel('N', 'voltage', [1]),
  );
  expect(Array.from(selectVoltageChannels(named, 'L-N').channels[0]!.samples)).toEqual([7]);
});

test('selectVoltageChannels(capture) measures a current where there is no voltage, and says so', () => {
  const selected = selectVoltageChannels(capture(channel('Load', 'current', [1])));
  expect(names(selected)).toEqual(['Load']);
  expect(selected.notices.map((notice) => notice.code)).toEqual(['channels.currentOnly']);
});

test('selectVoltageChannels(capture, name) refuses what it cannot measure, naming what there is', () => {
  const refused = (name?: string, of = scope): unknown => {
    try {
      return selectVoltageChannels(of, name);
    } catch (error) {
      return error;
    }
  };
  expect(refused('CH7')).toMatchObject({
    code: 'channel.unknown',
    facts: { wanted: 'CH7', channels: ['Load', 'CH1', 'CH2', 'P'] },
  });
  expect(refused('P')).toMatchObject({ code: 'channel.unmeasurable' });
  expect(refused('CH1-Load')).toMatchObject({ code: 'channel.difference' });
  expect(refused(undefined, capture(channel('P', 'other', [1])))).toMatchObject({ code: 'channels.none' });
});

test('selectVoltageChannels(capture) doubts the first where another carries far more', () => {
  const both = (second: number): Capture =>
    capture(
      channel('CH1', 'voltage', [2, -2, 2, -2]),
      channel('CH4', 'voltage', [second, -second, second, -second]),
    );
  const [doubt, ...others] = selectVoltageChannels(both(38)).notices;
  expect(doubt).toEqual({
    ...{ code: 'channels.larger', channel: 'CH4', swing: 38, unit: 'V', first: 'CH1', times: 19 },
  });
  expect(others.map(({ code }) => code)).toEqual(['channels.others']);
  expect(selectVoltageChannels(both(9)).notices.map(({ code }) => code)).toEqual(['channels.others']);
  expect(selectVoltageChannels(both(38), 'CH1').notices).toEqual([]);
});
