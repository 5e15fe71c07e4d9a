import { expect, test } from 'vitest';
import { outletClaims, parseUnitClaim } from '../../../src/entry/benching.ts';
import { completeOptions } from '../../../src/entry/measuring.ts';
import { outletOptions } from '../../../src/page/worker/sweepHeld.ts';

const claims = outletClaims(['120 V ±5 %', 'transfer < 20 ms', 'power 600 W'].map(parseUnitClaim));
const ofUnit = { label: 'Inverter A', load: '300 W', claims: claims.sweep, nominal: claims.nominal };

test('a capture of which nothing is told carries what a bench test says of it, and no more', () => {
  const options = outletOptions(completeOptions({ label: 'another', load: 'kettle' }), ofUnit);
  expect(JSON.stringify(options)).toBe(
    JSON.stringify({
      ...{ nominal: { voltageV: 120 }, label: 'Inverter A', rule: 'guarded' },
      ...{ claims: [parseUnitClaim('120 V ±5 %')], load: '300 W' },
    }),
  );
});

test('what is told of the capture alone stays, and its nominal comes before the claimed one', () => {
  const told = completeOptions({
    ...{ voltage: 'CH1', current: 'CH2', scales: [{ channel: null, factor: 200 }], inverted: ['CH1'] },
    ...{ nominal: { voltageV: 230 }, instrument: { bits: 12 }, sampleRateHz: 1e5, sineThdPercent: 3 },
    meter: { readingV: 231, dcCoupled: true },
  });
  const { nominal, claims: _, label: __, load: ___, rule, ...others } = outletOptions(told, ofUnit);
  expect(nominal).toEqual({ voltageV: 230 });
  expect(rule).toBe('guarded');
  const { claims: ____, orders: _____, perWindow: ______, rule: _______, nominal: ________, ...kept } = told;
  expect(others).toEqual(kept);
});

test('a load that is measured is told by nobody', () => {
  expect(outletOptions({}, { ...ofUnit, load: null })).not.toHaveProperty('load');
});
