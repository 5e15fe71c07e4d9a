import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { isPng, isSealedPng, sealedPng } from '../../../src/cli/report/sealedPng.ts';
import {
  isSealedText,
  ownBenchOutput,
  ownOutput,
  ownTable,
  sealedText,
  unsealed,
} from '../../../src/cli/writing/ownOutput.ts';
import { writeOutput, writeWhole } from '../../../src/cli/writing/writeOutput.ts';
import { benchFolder } from '../benchFolder.ts';

const [a, b] = ['a'.repeat(64), 'b'.repeat(64)] as const;
const folder = benchFolder({ 'in-the-way': null });
const path = join(folder, 'sheet.svg');
const isOwn = ownOutput([a]);

const sealed = (text: string): string => sealedText('page.html', text);

test('a free name is taken, an earlier result of the same capture replaced', async () => {
  await writeOutput(path, `${a} 1 ${unsealed}`, { isOwn, force: false });
  await writeOutput(path, `${a} 2 ${unsealed}`, { isOwn, force: false });
  expect(readFileSync(path, 'utf8')).toBe(sealedText(path, `${a} 2 ${unsealed}`));
});

test('a seal holds for the text that it was made for, and for no other', () => {
  const text = sealed('<p>sineassay</p>\n');
  expect(text).toMatch(/^<p>sineassay<\/p>\n<!-- sineassay-seal-[0-9a-f]{64} -->\n$/);
  expect(isSealedText(text)).toBe(true);
  for (let i = 0; i < text.length; i++) {
    expect(isSealedText(text.slice(0, i) + (text[i] === 'b' ? 'c' : 'b') + text.slice(i + 1))).toBe(false);
  }
  expect(isSealedText(`${text} `)).toBe(false);
  expect(isSealedText('sineassay')).toBe(false);
  expect(isSealedText(unsealed)).toBe(false);
  // Once in each row of a table.
  const rows = sealedText('figures.csv', `a,${unsealed}\nb,${unsealed}\n`);
  expect(isSealedText(rows)).toBe(true);
  expect(isSealedText(rows.replace('b,', 'c,'))).toBe(false);
});

test('the seal of a picture is in a line that no viewer shows', () => {
  // Signature, a header chunk of thirteen bytes, and the chunk that ends it (ISO/IEC 15948, 5.2 and 11.2).
  const header = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13];
  const png = Buffer.concat([
    Buffer.of(...header),
    Buffer.from('IHDR'),
    Buffer.alloc(17),
    Buffer.from('end'),
  ]);
  const picture = Buffer.from(sealedPng(png, `sineassay: ${a}`));
  expect(isPng(picture) && isSealedPng(picture)).toBe(true);
  expect(ownOutput([a])(picture)).toBe(true);
  expect(ownOutput([b])(picture)).toBe(false);
  for (const i of [20, 34, 60, picture.length - 1]) {
    const changed = Buffer.from(picture);
    changed[i]! ^= 1;
    expect(isSealedPng(changed)).toBe(false);
  }
  expect(isSealedPng(png)).toBe(false);
  expect(isSealedPng(picture.subarray(0, 40))).toBe(false);
});

test.each([
  ['another capture’s', sealed(`sineassay ${b}`)],
  ['one that merely names the program and the capture', `sineassay ${a}`],
  ['one that was changed', sealed(`sineassay ${a}`).replace('sineassay', 'Sineassay')],
  ['somebody else’s', `drawing ${a}`],
  ['an empty file', ''],
])('%s is left alone unless told to replace it', async (_, there) => {
  writeFileSync(path, there);
  const write = (force: boolean) => writeOutput(path, 'new', { isOwn, force });
  await expect(write(false)).rejects.toMatchObject({ code: 'file.exists' });
  expect(readFileSync(path, 'utf8')).toBe(there);
  await write(true);
  expect(readFileSync(path, 'utf8')).toBe('new');
});

test('a sheet of two captures is one of either of a bench test, and no table of one', () => {
  const there = Buffer.from(sealed(`sineassay ${a} ${b}`));
  expect(ownOutput([a, b])(there)).toBe(true);
  expect(ownBenchOutput([a, 'c'.repeat(64)])(there)).toBe(true);
  expect(ownTable([a])(there)).toBe(false);
  expect(ownTable([a, b])(there)).toBe(true);
});

test('what can’t be written leaves nothing behind', async () => {
  await expect(writeWhole(join(folder, 'in-the-way'), 'x')).rejects.toMatchObject({
    code: 'file.unwritable',
  });
  await expect(writeWhole(join(folder, 'none', 'x'), 'x')).rejects.toMatchObject({ code: 'file.unwritable' });
  expect(readdirSync(folder).sort()).toEqual(['in-the-way', 'sheet.svg']);
});
