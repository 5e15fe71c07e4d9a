import { expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { parseUnitClaim } from '../../../src/bench/claims/parseUnitClaim.ts';

test.each([
  ['power 600 W', 'powerW', 600],
  ['continuous power: 1.2 kW', 'powerW', 1200],
  ['surge 2kW', 'surgeW', 2000],
  ['peak power 1500 W', 'surgeW', 1500],
  ['capacity 512 Wh', 'capacityWh', 512],
  ['Capacity: 1,5 kWh', 'capacityWh', 1500],
])('%s', (text, quantity, rating) => {
  expect(parseUnitClaim(text)).toEqual({ text, quantity, rating });
});

test.each([
  ['pure sine', 'waveform'],
  ['wave: pure sine', 'waveform'],
  ['voltage 120 V ±5 %', 'rmsV'],
  ['THD < 3 %', 'thdPercent'],
  ['transfer < 20 ms', 'transferS'],
])('%s is what a capture can judge', (text, quantity) => {
  expect(parseUnitClaim(text)).toMatchObject({ text, quantity });
});

test.each(['power', 'power 600 V', 'surge 0 W', 'capacity 500 W', 'capacity Wh', 'nonsense'])(
  '"%s" is refused',
  (text) => {
    expect(() => parseUnitClaim(text)).toThrow(MeasureError);
  },
);
