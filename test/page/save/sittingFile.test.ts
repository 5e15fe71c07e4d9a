import { expect, test } from 'vitest';
import type { Entry } from '../../../src/page/desk/entry.ts';
import { readSitting, sittingText } from '../../../src/page/save/sittingFile.ts';
import { nothingTold, type Told } from '../../../src/page/told/told.ts';

const entry = (name: string, content: BlobPart, told: Partial<Told> = {}): Entry => ({
  ...{ id: 1, name, file: new Blob([content]), channel: 0 },
  told: { ...nothingTold, ...told },
  state: { at: 'work', share: null, before: null },
});
const bytesOf = async (file: Blob): Promise<Uint8Array> => new Uint8Array(await file.arrayBuffer());

test('a sitting is read back byte for byte, with all that was told', async () => {
  const every = Uint8Array.from({ length: 300_000 }, (_, i) => (i * 7919) >> 3);
  const told = {
    label: 'A “red” <b>',
    claims: 'pure sine\nTHD < 3 %',
    inverted: true,
    instrument: { bits: '8' },
  };
  const text = await sittingText([entry('a/one.csv', every, told), entry('empty.csv', '')]);
  expect(text.endsWith('\n')).toBe(true);
  const [one, empty, ...more] = await readSitting(text);
  expect(more).toEqual([]);
  expect(one).toMatchObject({ name: 'a/one.csv', told: { ...nothingTold, ...told } });
  expect(await bytesOf(one!.file)).toEqual(every);
  expect(empty?.file.size).toBe(0);
});

test('repeating rows are kept in far less', async () => {
  const text = await sittingText([entry('one.csv', '0.001,230.0\n'.repeat(50_000))]);
  expect(text.length).toBeLessThan(20_000);
});

const gzip = JSON.parse(await sittingText([entry('one.csv', '0,1\n')])).captures[0].gzip as string;
const document = (captures: unknown, schema = 'sineassay/sitting@1'): string =>
  JSON.stringify({ schema, captures });

test.each([
  ['no JSON', 'Time,V\n0,1', 'sitting.unknown'],
  ['nothing', '', 'sitting.unknown'],
  ['null', 'null', 'sitting.unknown'],
  ['a list', '[]', 'sitting.unknown'],
  ['results', document([], 'sineassay/measure@1'), 'sitting.unknown'],
  ['no captures', document(undefined), 'sitting.unknown'],
  ['captures of another kind', document({ length: 1 }), 'sitting.unknown'],
  ['a capture that is null', document([null]), 'sitting.unknown'],
  ['a capture without a name', document([{ gzip }]), 'sitting.unknown'],
  ['bytes of another kind', document([{ file: 'a.csv', gzip: 5 }]), 'sitting.unknown'],
  ['no base64', document([{ file: 'a.csv', gzip: '€' }]), 'sitting.damaged'],
  ['no gzip', document([{ file: 'a.csv', gzip: btoa('plain') }]), 'sitting.damaged'],
  ['cut short', document([{ file: 'a.csv', gzip: gzip.slice(0, 20) }]), 'sitting.damaged'],
  ['a digit changed', document([{ file: 'a.csv', gzip: `${gzip.slice(0, -8)}AAAAAAA=` }]), 'sitting.damaged'],
])('a file with %s is refused', async (_, text, code) => {
  await expect(readSitting(text)).rejects.toMatchObject({
    name: 'MeasureError',
    code,
    detail: { advice: expect.any(String) },
  });
});

test('what was told in another kind counts as not told', async () => {
  const told = {
    label: 5,
    claims: ['x'],
    inverted: 'yes',
    load: '300 W',
    instrument: { bits: 8, gainPercent: '1' },
    more: 1,
  };
  const [one] = await readSitting(document([{ file: 'a.csv', gzip, told }]));
  expect(one?.told).toEqual({ ...nothingTold, load: '300 W', instrument: { gainPercent: '1' } });
  const [none] = await readSitting(document([{ file: 'a.csv', gzip }]));
  expect(none?.told).toEqual(nothingTold);
});
