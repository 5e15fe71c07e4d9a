import { expect, test } from 'vitest';
import { nameAndUnit, nameSays } from '../../../src/read/head/names.ts';

test.each([
  ['Time (ms)', 'Time', 's'],
  ['CH1 [V]', 'CH1', 'V'],
  ['U1/kV', 'U1', 'V'],
  ['t in s', 't', 's'],
  ['outlet_mV', 'outlet', 'V'],
  ['# time_s', 'time', 's'],
  ['CH1V', 'CH1', 'V'],
  ['Volt2', 'Volt2', 'V'],
  ['sec', 'sec', 's'],
  ['ms', 'ms', 's'],
] as const)('nameAndUnit(%j)', (cell, name, symbol) => {
  const read = nameAndUnit(cell);
  expect(read.name).toBe(name);
  expect(read.unit?.symbol).toBe(symbol);
});

test('nameAndUnit(cell) takes no unit where a name only looks like one', () => {
  for (const cell of ['CH1', 'A', 'V_a', 'I_s', 'Channel A', 'V(out)', 'I_ch1', '1', 'X']) {
    expect(nameAndUnit(cell), cell).toEqual({ name: cell, unit: null });
  }
});

test.each([
  ['I_ch1', 'current'],
  ['Load current', 'current'],
  ['I(R1)', 'current'],
  ['V_ch1', 'voltage'],
  ['Spannung', 'voltage'],
  ['Power', 'product'],
  ['CH1*CH2', 'product'],
  ['Event', 'event'],
  ['x-axis', 'time'],
  ['Temps', 'time'],
  ['CH1 Time', 'time'],
  ['Sample', 'index'],
  ['freq', 'frequency'],
  ['Outlet', 'silent'],
  ['Inverter', 'silent'],
  ['CH1', 'silent'],
  ['', 'silent'],
] as const)('nameSays(%j) is %s', (name, says) => {
  expect(nameSays(name)).toBe(says);
});
