import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';

test('the page is written as one file that reaches nothing, and again over an earlier one', async () => {
  const folder = benchFolder({});
  for (let time = 0; time < 2; time++) {
    const { code, stdout, stderr } = await runCommand(['page', '--out', 'out/here.html'], folder);
    expect({ code, stdout, stderr }).toEqual({ code: 0, stdout: 'Page: out/here.html\n', stderr: '' });
  }
  const page = readFileSync(resolve(folder, 'out/here.html'), 'utf8');
  // What a phone loads in a moment; two typefaces and the drawing of every sheet are in it.
  expect(page.length).toBeLessThan(800_000);
  expect(page).toContain("default-src 'none'");
  // Script, style and typeface are inside: nothing is fetched, not even from beside it.
  expect(page.match(/<(?:script|link|img|iframe)\b[^>]*\b(?:src|href)=/g)).toBeNull();
  expect(page).toContain('Mains voltage can kill');
  expect(page).toContain('not a certificate');
});

test('what is no such page is left alone unless that is asked for', async () => {
  const folder = benchFolder({});
  const foreign = resolve(folder, 'notes.html');
  writeFileSync(foreign, 'notes of the evening');
  const refused = await runCommand(['page', '--out', 'notes.html'], folder);
  expect(refused.code).toBe(2);
  expect(refused.stderr).toBe(
    'notes.html: notes.html is there already, and is not an earlier page; expected a free name, or an earlier page as it was written. Name another place with --out, or replace the file with --force.\n',
  );
  expect(readFileSync(foreign, 'utf8')).toBe('notes of the evening');
  expect((await runCommand(['page', '--out', 'notes.html', '--force'], folder)).code).toBe(0);
});
