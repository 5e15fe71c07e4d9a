import { expect, test } from 'vitest';
import { envelopeNames } from '../../../src/read/columns/layColumns.ts';

test('envelopeNames(names) finds pairs that differ in minimum and maximum alone', () => {
  expect([...envelopeNames(['CH1', 'CH1 min', 'CH1 max', 'CH2_Min', 'CH2_Max'])]).toEqual([
    'CH1 min',
    'CH1 max',
    'CH2_Min',
    'CH2_Max',
  ]);
  expect([...envelopeNames(['Lower', 'Upper'])]).toEqual(['Lower', 'Upper']);
});

test('envelopeNames(names) leaves one side alone, and names that only hold the letters', () => {
  expect([...envelopeNames(['CH1 max', 'CH2 min', 'Maximilian', 'Minute'])]).toEqual([]);
});
