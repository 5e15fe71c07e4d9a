import { expect, test } from 'vitest';
import { completeOptions } from '../../../src/assay/assayOptions.ts';
import type { FieldName } from '../../../src/entry/grammar.ts';
import { nothingTold, type Told } from '../../../src/page/told/told.ts';
import { toldOptions } from '../../../src/page/told/toldOptions.ts';

const understood = (told: Partial<Told>): ReturnType<typeof toldOptions> =>
  toldOptions({ ...nothingTold, ...told });
const faultsOf = (told: Partial<Told>): FieldName[] => [...understood(told).faults.keys()];

test('nothing told is every default, and no fault', () => {
  const { options, faults } = understood({});
  expect(options).toEqual(completeOptions({}));
  expect(faults.size).toBe(0);
});

test('each field is understood in the terms of the core', () => {
  const { options, faults } = understood({
    ...{ label: ' Inverter A ', load: '300 W', voltage: 'CH1-CH2', current: 'ch2.csv:Clamp', scale: '-200' },
    ...{ nominal: '230V/50Hz', claims: 'pure sine\n\n THD < 3 % \n', meterV: '229,5', meterDc: true },
    ...{ sampleRateHz: '1e5', sineThdPercent: '3', inverted: true },
    instrument: { gainPercent: '0', bits: '12', offsetV: '0.5' },
  });
  expect([...faults]).toEqual([]);
  expect(options).toMatchObject({
    ...{ label: 'Inverter A', load: '300 W', voltage: 'CH1-CH2', current: 'ch2.csv:Clamp' },
    ...{ scales: [{ channel: null, factor: -200 }], sampleRateHz: 1e5, sineThdPercent: 3 },
    nominal: { voltageV: 230, frequencyHz: 50 },
    meter: { readingV: 229.5, dcCoupled: true },
    instrument: { gainPercent: 0, bits: 12, offsetV: 0.5 },
    // What is measured has a name once the capture has been read.
    inverted: [],
  });
  expect(options.claims?.map(({ text }) => text)).toEqual(['pure sine', 'THD < 3 %']);
});

test('what is wrong is named at its field and left out, the rest is understood', () => {
  const { options, faults } = understood({
    ...{ claims: 'pure sine\nas good as new', nominal: 'much', label: 'A' },
    ...{ scale: '0', meterV: '-1', sampleRateHz: 'fast', sineThdPercent: '0' },
    instrument: { bits: '8.5', gainPercent: '-1', bandwidthHz: '0', meterPercent: '1' },
  });
  expect([...faults.keys()].sort()).toEqual(
    [
      ...(['bandwidthHz', 'bits', 'claims', 'gainPercent', 'meterV', 'nominal', 'sampleRateHz'] as const),
      ...(['scale', 'sineThdPercent'] as const),
    ].sort(),
  );
  for (const words of faults.values()) expect(words).toMatch(/^["A-Z].*\.$/);
  expect(options.claims?.map(({ text }) => text)).toEqual(['pure sine']);
  expect(options).toMatchObject({ label: 'A', scales: [], instrument: { meterPercent: 1 } });
  expect(options).not.toHaveProperty('meter');
});

test('a comma is a decimal mark, but where it may as well set thousands apart nobody guesses', () => {
  expect(understood({ scale: '1,5' }).options.scales).toEqual([{ channel: null, factor: 1.5 }]);
  expect(understood({ scale: '0,125' }).options.scales).toEqual([{ channel: null, factor: 0.125 }]);
  expect(understood({ scale: '1,2345' }).options.scales).toEqual([{ channel: null, factor: 1.2345 }]);
  for (const text of ['1,000', '10,500', '-1,414']) {
    expect(faultsOf({ scale: text })).toEqual(['scale']);
    expect(understood({ scale: text }).faults.get('scale')).toContain(text.replace(',', '.'));
  }
  expect(faultsOf({ scale: '1,000,000' })).toEqual(['scale']);
});

test('blanks are nothing told', () => {
  expect(understood({ label: '  ', scale: ' ', instrument: { bits: ' ' } }).options).toEqual(
    completeOptions({}),
  );
});
