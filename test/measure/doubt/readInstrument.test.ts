import { expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { readInstrument } from '../../../src/measure/doubt/readInstrument.ts';

const refusal = (text: string): MeasureError => {
  try {
    readInstrument(text);
  } catch (error) {
    if (error instanceof MeasureError) return error;
    throw error;
  }
  throw new Error('accepted');
};

test('readInstrument(text) gives the keys that stand there', () => {
  expect(readInstrument('# scope of the library\nbits: 12\ngainPercent: 1.5\noffsetV: 0.2\n')).toEqual({
    bits: 12,
    gainPercent: 1.5,
    offsetV: 0.2,
  });
  expect(readInstrument('')).toEqual({});
  expect(readInstrument('bandwidthHz: 20e6')).toEqual({ bandwidthHz: 20e6 });
});

test('what is wrong is named with its line', () => {
  expect(refusal('bits: 8\ngain: 3\n')).toMatchObject({
    code: 'instrument.key',
    facts: { key: 'gain' },
    place: { line: 2 },
  });
  expect(refusal('gainPercent: three')).toMatchObject({ code: 'instrument.value', place: { line: 1 } });
  expect(refusal('a: 1\n')).toMatchObject({ facts: { key: 'a' } });
  expect(refusal('gainPercent: -1').code).toBe('instrument.value');
  expect(refusal('bits: 0').code).toBe('instrument.value');
  expect(refusal('gainPercent: .nan').code).toBe('instrument.value');
  expect(refusal('- 1\n- 2').code).toBe('instrument.value');
  expect(refusal('bits: [1\n')).toMatchObject({ code: 'yaml.syntax' });
});
