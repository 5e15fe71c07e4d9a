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
  ['surge 2000 W for 5 s', 2000, 5],
  ['surge: 1.5 kW for 200 ms', 1500, 0.2],
  ['peak power 900 W for 3 seconds', 900, 3],
  ['surge 1kW for 2 min', 1000, 120],
])('%s', (text, rating, forS) => {
  expect(parseUnitClaim(text)).toEqual({ text, quantity: 'surgeW', rating, forS });
});

test.each([
  ['efficiency > 85%', { min: 85 }],
  ['efficiency ≥ 85 %', { min: 85 }],
  ['conversion efficiency at least 90 %', { min: 90 }],
  ['efficiency: 85..95 %', { min: 85, max: 95 }],
])('%s', (text, limit) => {
  expect(parseUnitClaim(text)).toEqual({ text, quantity: 'conversionEfficiencyPercent', limit });
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

test.each([
  'power',
  'power 600 V',
  'surge 0 W',
  'capacity 500 W',
  'capacity Wh',
  'nonsense',
  'surge 900 W for 0 s',
  'power 900 W for 5 s',
  'efficiency',
  'efficiency 85 %',
  'efficiency > 850 %',
  'efficiency > 85 V',
])('"%s" is refused', (text) => {
  expect(() => parseUnitClaim(text)).toThrow(MeasureError);
});
