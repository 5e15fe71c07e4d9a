import { expect, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import { outOfReach } from '../../src/assay/reasons.ts';
import type { BenchReason } from '../../src/bench/reasons.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { reasonText } from '../../src/words/reasons.ts';
import { worded } from '../../src/words/worded.ts';

test('a reason is worded from its facts; one that a document brought has its words', () => {
  expect(reasonText(outOfReach({ code: 'groups.outOfReach', order: 50 }).reason)).toBe(
    'order 50 is out of reach',
  );
  expect(reasonText('as the document says')).toBe('as the document says');
  const both: BenchReason = { code: 'difference.missing', a: { code: 'mean.zero' }, b: 'no voltage' };
  expect(reasonText(both)).toBe('A: the mean is zero; B: no voltage');
  const one: BenchReason = { ...both, a: null };
  expect(reasonText(one)).toBe('B: no voltage');
  expect(() => reasonText({ code: 'nowhere.told' })).toThrow(RangeError);
});

/** Every reason in a value, with where it stands. */
function reasonsIn(value: unknown, path = ''): readonly (readonly [string, unknown])[] {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([key, part]) =>
    key === 'reason' ? [[path, part] as const] : reasonsIn(part, `${path}.${key}`),
  );
}

test('a measured direct voltage gives its reasons as data, and the document says them', () => {
  const rows = Array.from({ length: 2000 }, (_, i) => `${(i * 1e-4).toFixed(4)},${12 + (i % 3) * 0.01}`);
  const bytes = new TextEncoder().encode(`Time (s),CH1 (V)\n${rows.join('\n')}\n`);
  const [assay] = assayCapture(readCapture(bytes), { file: 'rail.csv', sha256: '0'.repeat(64) }, {});
  const found = reasonsIn(assay!.result);
  expect(found.length).toBeGreaterThan(5);
  for (const [, reason] of found) expect(reason).toMatchObject({ code: expect.any(String) });
  const said = reasonsIn(worded(assay!.result));
  expect(said.map(([path]) => path)).toEqual(found.map(([path]) => path));
  for (const [path, reason] of said) expect(reason, path).toEqual(expect.any(String));
});
