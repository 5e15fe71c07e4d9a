import { expect, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import { completeOptions } from '../../src/assay/assayOptions.ts';
import type { PartlyTold } from '../../src/assay/options/optionLists.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { smallCapture } from '../cli/smallCapture.ts';

const told: PartlyTold = {
  meter: { readingV: 120, dcCoupled: false },
  label: 'A',
  sampleRateHz: 1000,
  load: undefined,
  scales: [{ channel: null, factor: 2 }],
  instrument: undefined,
  orders: 40,
};

test('completeOptions(told) keeps what is told, leaves out what is not, and names every default', () => {
  expect(completeOptions(told)).toStrictEqual({
    ...{ claims: [], scales: [{ channel: null, factor: 2 }], inverted: [], rule: 'guarded', orders: 40 },
    ...{ sineThdPercent: 5, perWindow: false, label: 'A', sampleRateHz: 1000 },
    meter: { readingV: 120, dcCoupled: false },
  });
});

test('the order of the keys is the same in whatever order they were told', () => {
  const other = Object.fromEntries(Object.entries(told).toReversed()) as PartlyTold;
  expect(JSON.stringify(completeOptions(other))).toBe(JSON.stringify(completeOptions(told)));
});

test('defaults are those of the measurement: told or not, the result is the same', () => {
  const capture = readCapture(smallCapture());
  const source = { file: 'a.csv', sha256: '' };
  expect(assayCapture(capture, source, completeOptions({}))).toEqual(assayCapture(capture, source));
});
