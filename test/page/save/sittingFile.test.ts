import { expect, test, vi } from 'vitest';
import type { Entry } from '../../../src/page/desk/sitting.ts';
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
  const [one, empty, ...more] = await readSitting(new Blob([text]));
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
  await expect(readSitting(new Blob([text]))).rejects.toMatchObject({
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
  const [one] = await readSitting(new Blob([document([{ file: 'a.csv', gzip, told }])]));
  expect(one?.told).toEqual({ ...nothingTold, load: '300 W', instrument: { gainPercent: '1' } });
  const [none] = await readSitting(new Blob([document([{ file: 'a.csv', gzip }])]));
  expect(none?.told).toEqual(nothingTold);
});

/** Bytes, packed. */
const gzipOf = async (content: BlobPart): Promise<Uint8Array> =>
  new Uint8Array(
    await new Response(new Blob([content]).stream().pipeThrough(new CompressionStream('gzip'))).arrayBuffer(),
  );
const text64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

test('more than there is room for is refused before any of it is unpacked', async () => {
  const large = text64(await gzipOf(new Uint8Array(3_000_000)));
  // Not even gzip but for its end, which says how long it is.
  const none = text64(Buffer.concat([Buffer.alloc(14), Buffer.of(0, 0, 0, 1)]));
  const one = new Blob([document([{ file: 'a.csv', gzip: large }])]);
  const two = new Blob([
    document([
      { file: 'a.csv', gzip: none },
      { file: 'b.csv', gzip: large },
    ]),
  ]);
  expect((await readSitting(one, 3_000_000))[0]?.file.size).toBe(3_000_000);
  await expect(readSitting(one, 2_999_999)).rejects.toMatchObject({
    code: 'sitting.tooLarge',
    detail: { expected: 'at most 3 MiB', received: '3 MiB', advice: expect.any(String) },
  });
  await expect(readSitting(two, 19_000_000)).rejects.toMatchObject({ code: 'sitting.tooLarge' });
  await expect(readSitting(two, 20_000_000)).rejects.toMatchObject({ code: 'sitting.damaged' });
});

test('a capture that unpacks to more than it says is given up at once', async () => {
  const packed = await gzipOf(new Uint8Array(40_000_000));
  new DataView(packed.buffer).setUint32(packed.length - 4, 1000, true);
  const sitting = new Blob([document([{ file: 'a.csv', gzip: text64(packed) }])]);
  await expect(readSitting(sitting, 2_000)).rejects.toMatchObject({ code: 'sitting.damaged' });
});

test('a file longer than all of it may be unpacked is not even read', async () => {
  const sitting = new Blob([document([]).padEnd(3 * 2 ** 20)]);
  const read = vi.spyOn(sitting, 'text');
  // Base64 takes four thirds, and a MiB is for all beside the captures.
  await expect(readSitting(sitting, 1.4 * 2 ** 20)).rejects.toMatchObject({
    code: 'sitting.tooLarge',
    message: 'The sitting is larger than this browser may hold.',
    detail: { expected: 'at most 3 MiB', received: '3 MiB' },
  });
  expect(read).not.toHaveBeenCalled();
  expect(await readSitting(sitting, 1.5 * 2 ** 20)).toEqual([]);
});
