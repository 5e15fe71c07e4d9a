import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { MeasureError } from '../../src/base/measureError.ts';
import { admit, admitPartly, admitWritten, type Misfit, noList, type Schema } from '../../src/base/schema.ts';

function misfitIn(door: typeof admit, value: unknown, schema: Schema<unknown>): Misfit {
  let found: Misfit | undefined;
  const refused = new MeasureError('refused', {});
  expect(() =>
    door(value, schema, (misfit) => {
      found = misfit;
      return refused;
    }),
  ).toThrow(refused);
  return found!;
}

const inner = v.strictObject({ a: v.number('a number'), b: v.optional(v.string()) }, 'an inner');
const outer: Schema<unknown> = v.looseObject({ list: v.array(v.union([v.string(), inner])) });

describe('the first part that does not fit', () => {
  test.each<[string, unknown, string, Misfit['fault'], string]>([
    ['a value', { list: ['x', { a: 'x' }] }, 'list.1.a', 'value', 'a number'],
    ['a key that is missing', { list: [{ b: 'x' }] }, 'list.0.a', 'missing key', 'an inner'],
    ['a key that is not known', { list: [{ a: 1, c: 2 }] }, 'list.0.c', 'unknown key', 'an inner'],
  ])('%s is named by its place, within one of several shapes too', (_, value, place, fault, says) => {
    expect(misfitIn(admit, value, outer)).toMatchObject({ place, fault, says });
  });

  test('of what may be one thing or another and is neither, the whole is named', () => {
    expect(misfitIn(admit, { list: [5] }, outer)).toMatchObject({ place: 'list.0', value: 5 });
  });

  test('a key misspelt comes before the one that it leaves missing', () => {
    const value = { list: [{ aa: 1 }] };
    expect(misfitIn(admit, value, outer).fault).toBe('missing key');
    expect(misfitIn(admitWritten, value, outer)).toMatchObject({ fault: 'unknown key', place: 'list.0.aa' });
  });
});

test('what goes through is the value itself', () => {
  const value = { list: [], more: 1 };
  expect(admit(value, outer, () => new MeasureError('x', {}))).toBe(value);
  expect(admitWritten(value, outer, () => new MeasureError('x', {}))).toBe(value);
});

test('a part with a fallback may be wrong', () => {
  const schema = v.object({ a: v.fallback(v.string(), ''), b: v.number() });
  expect(admitPartly({ a: 5, b: 1, c: 2 }, schema, () => new MeasureError('x', {}))).toEqual({
    a: '',
    b: 1,
  });
  expect(misfitIn(admitPartly, { a: 5, b: '1' }, schema).place).toBe('b');
});

test('a list is no object', () => {
  const schema = v.record(v.string(), v.number()) as Schema<unknown>;
  expect(v.is(schema, [1])).toBe(true);
  expect(v.is(noList(schema, 'keys'), [1])).toBe(false);
  expect(v.is(noList(schema, 'keys'), { x: 1 })).toBe(true);
  expect(misfitIn(admit, [1], noList(schema, 'keys'))).toMatchObject({ place: '', says: 'keys' });
});
