import { expect, test } from 'vitest';
import { unitOf } from '../../../src/read/head/unitOf.ts';

test.each([
  ['s', 'time', 's', 1],
  ['Second', 'time', 's', 1],
  ['(ms)', 'time', 's', 1e-3],
  ['microseconds', 'time', 's', 1e-6],
  ['µs', 'time', 's', 1e-6],
  ['\u03bcs', 'time', 's', 1e-6],
  ['us', 'time', 's', 1e-6],
  ['ns', 'time', 's', 1e-9],
  ['MS', 'time', 's', 1e-3],
  ['in s', 'time', 's', 1],
  ['[in µs]', 'time', 's', 1e-6],
  ['MS/s', 'rate', 'Hz', 1e6],
  ['kS/s', 'rate', 'Hz', 1e3],
  ['GSa/s', 'rate', 'Hz', 1e9],
  ['MHz', 'frequency', 'Hz', 1e6],
  ['V', 'voltage', 'V', 1],
  ['VOLTS', 'voltage', 'V', 1],
  ['mV', 'voltage', 'V', 1e-3],
  ['MV', 'voltage', 'V', 1e-3],
  ['[kV]', 'voltage', 'V', 1e3],
  ['Ampere', 'current', 'A', 1],
  ['mA', 'current', 'A', 1e-3],
  ['kHz', 'frequency', 'Hz', 1e3],
  ['MSa/s', 'rate', 'Hz', 1e6],
  ['dBV', 'level', 'dBV', 1],
  ['kW', 'product', 'W', 1e3],
  ['VA', 'product', 'VA', 1],
  ['counts', 'counts', 'counts', 1],
  ['Sequence', 'index', 'Sequence', 1],
] as const)('unitOf(%j) is a unit of %s', (text, dimension, symbol, factor) => {
  expect(unitOf(text)).toEqual({ dimension, symbol, factor });
});

test('unitOf(text) is null for words that are no unit', () => {
  for (const text of ['', 'CH1', 'Outlet', 'm', 'mdBV', 'Vx', 'MB']) expect(unitOf(text), text).toBeNull();
});
