import { expect, test } from 'vitest';
import { chosenFiles, droppedFiles } from '../../../src/page/desk/takenFiles.ts';

const fileAt = (path: string): File =>
  Object.defineProperty(new File(['0'], path.split('/').at(-1)!), 'webkitRelativePath', { value: path });
const names = (files: readonly { readonly name: string }[]): string[] => files.map(({ name }) => name);

test('chosenFiles(files) names those of a folder with it and leaves out what is no capture', () => {
  const folder = [
    ...['evening/CH1.csv', 'evening/deep/CH2.CSV', 'evening/noending', 'evening/wave.txt', 'evening/a.tsv'],
    ...['evening/screen.PNG', 'evening/plan.yaml', 'evening/notes.md', 'evening/sitting.json'],
    ...['evening/.hidden', '~evening/a.csv', 'evening/~lock.csv', 'evening/Thumbs.db'],
  ];
  expect(names(chosenFiles(folder.map(fileAt)))).toEqual(folder.slice(0, 5));
  // Who chooses one file means that file.
  expect(names(chosenFiles([new File(['0'], 'screen.png'), new File(['0'], 'sitting.json')]))).toEqual([
    ...['screen.png', 'sitting.json'],
  ]);
});

interface Listing {
  readonly [name: string]: string | Listing;
}

const entries: Listing = { 'b.csv': '1', 'a.csv': '2', 'notes.md': '', deep: { 'c.csv': '3' } };

/** As browsers hand over a folder that was dropped, a hundred files at a time, at last none. */
function entryOf(name: string, content: string | Listing): object {
  if (typeof content === 'string')
    return {
      name,
      isFile: true,
      isDirectory: false,
      file: (done: (file: File) => void) => done(new File([content], name)),
    };
  const inside = Object.entries(content).map(([one, of]) => entryOf(one, of));
  const createReader = () => {
    const given = [...inside];
    return { readEntries: (done: (some: object[]) => void) => done(given.splice(0, 2)) };
  };
  return { name, isFile: false, isDirectory: true, createReader };
}

/** As a browser does it that gives handles. */
function handleOf(name: string, content: string | Listing): object {
  if (typeof content === 'string')
    return { kind: 'file', name, getFile: async () => new File([content], name) };
  return {
    ...{ kind: 'directory', name },
    async *values() {
      for (const [one, of] of Object.entries(content)) yield handleOf(one, of);
    },
  };
}

const transferOf = (...items: object[]): DataTransfer => ({ items }) as unknown as DataTransfer;
const file = { webkitGetAsEntry: () => entryOf('x.csv', '9'), getAsFile: () => new File(['9'], 'x.csv') };
const word = { webkitGetAsEntry: () => null, getAsFile: (): null => null };

test.each([
  ['by its entries', { webkitGetAsEntry: () => entryOf('evening', entries), getAsFile: (): null => null }],
  [
    'by its handle, where the page may not use entries',
    {
      webkitGetAsEntry: () => ({ isDirectory: true }),
      getAsFile: (): null => null,
      getAsFileSystemHandle: async () => handleOf('evening', entries),
    },
  ],
])('droppedFiles(transfer) takes files, and a folder whole and in order, %s', async (_, folder) => {
  const found = await droppedFiles(transferOf(word, file, folder));
  expect(names(found)).toEqual(['x.csv', 'evening/a.csv', 'evening/b.csv', 'evening/deep/c.csv']);
  expect(await Promise.all(found.map((one) => one.file.text()))).toEqual(['9', '2', '1', '3']);
});

test('droppedFiles(transfer) refuses a folder that the browser keeps closed, and says what to do', async () => {
  const createReader = () => ({
    readEntries: (_: unknown, fail: (problem: unknown) => void) =>
      fail(new DOMException('no', 'EncodingError')),
  });
  const closed = { ...{ name: 'evening', isFile: false, isDirectory: true }, createReader };
  await expect(
    droppedFiles(transferOf({ webkitGetAsEntry: () => closed, getAsFile: (): null => null })),
  ).rejects.toMatchObject({ code: 'folder.unreadable', detail: { advice: expect.stringMatching(/button/) } });
});
