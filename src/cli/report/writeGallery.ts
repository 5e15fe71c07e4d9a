import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { stringify } from 'csv-stringify/sync';
import { isSealed, type OpenedSheet, readEvidence } from '../../entry/evidence.ts';
import { errorWords, MeasureError, type MeasureResult, wordedError } from '../../entry/measuring.ts';
import { figuresTable, type Gallery, galleryPage } from '../../entry/pages.ts';
import { systemReason } from '../failures.ts';
import { version } from '../program.ts';
import { digest, readText } from '../reading/readText.ts';
import { ownGallery, ownTable, unsealed } from '../writing/ownOutput.ts';
import { makeFolder, writeOutput } from '../writing/writeOutput.ts';
import { linkedFile } from './formatOptions.ts';
import { openPagePress } from './openPress.ts';

/**
 * Writes the gallery of a folder, made from the sheets that lie there, whichever run wrote them; none where there
 * is no sheet.
 *
 * @throws MeasureError `file.unwritable` or `file.exists`.
 */
export async function writeGallery(out: string, force: boolean): Promise<void> {
  const listed = await listSheets(out);
  if (listed.sheets.length + listed.unread.length === 0) return;
  const page = galleryPage(await openPagePress(), { program: version, ...listed });
  await writeOutput(join(out, 'index.html'), page, { isOwn: ownGallery, force });
}

/** Beside a sheet of the same name. */
const besideEndings = ['.html', '.md', '.png', '-card.svg', '-card.png'];
/** Of a whole run. */
const runFiles = ['bench.html', 'bench.md', 'bench.json', 'figures.csv'];

/** Every sheet of a folder with what belongs to it, in the order of names; an empty gallery where there is no folder. */
async function listSheets(folder: string): Promise<Omit<Gallery, 'program'>> {
  const names = await fileNames(folder);
  const there = new Set(names);
  const sheets: Gallery['sheets'][number][] = [];
  const unread: Gallery['unread'][number][] = [];
  for (const name of names) {
    if (!isSheetName(name, there)) continue;
    const opened = await openedSheet(join(folder, name));
    if ('reason' in opened) unread.push({ name, reason: opened.reason });
    else sheets.push({ name, evidence: opened.evidence, beside: besideSheet(name, there) });
  }
  return { sheets, unread, others: runFiles.filter((name) => there.has(name)).map(linkedFile) };
}

async function fileNames(folder: string): Promise<readonly string[]> {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    const byName = new Intl.Collator('en', { numeric: true });
    return entries
      .filter((entry) => entry.isFile())
      .map(({ name }) => name)
      .sort((a, b) => byName.compare(stemOf(a), stemOf(b)) || (a < b ? -1 : 1));
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) return [];
    throw wordedError('file.unreadable', `${folder} could not be listed.`, {
      received: systemReason(error),
    });
  }
}

/** A card belongs to its sheet, and is listed itself only where that is missing. */
function isSheetName(name: string, there: ReadonlySet<string>): boolean {
  return (
    name.endsWith('.svg') && !(name.endsWith('-card.svg') && there.has(name.replace(/-card\.svg$/, '.svg')))
  );
}

async function openedSheet(path: string): Promise<OpenedSheet | { readonly reason: string }> {
  let text: string;
  try {
    text = await readText(path);
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    const { message, received = message } = errorWords(error);
    return { reason: `it could not be read: ${received}` };
  }
  try {
    const opened = readEvidence(text);
    return isSealed(opened, digest)
      ? opened
      : { reason: 'it was changed after it was written; “sineassay recheck” says where' };
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    const { message, received } = errorWords(error);
    return { reason: `${message}${received === undefined ? '' : ` Found: ${received}.`}` };
  }
}

/** The page of a capture tells of its changes too. */
function besideSheet(name: string, there: ReadonlySet<string>): Gallery['sheets'][number]['beside'] {
  const stem = stemOf(name);
  const page = `${stem.replace(/-changes$/, '')}.html`;
  const files = new Set([...besideEndings.map((ending) => `${stem}${ending}`), page]);
  return [...files].filter((file) => there.has(file)).map(linkedFile);
}

function stemOf(name: string): string {
  return name.replace(/\.[^.]*$/, '');
}

/**
 * Writes the figures of a run as one table, as RFC 4180 has it. Text that a spreadsheet would take for a formula
 * gets an apostrophe in front; numbers stay numbers.
 *
 * @throws MeasureError `file.unwritable` or `file.exists`.
 */
export async function writeFigures(
  results: readonly MeasureResult[],
  out: string,
  force: boolean,
): Promise<void> {
  const [headings = [], ...rows] = figuresTable(results, version);
  const sealed = [[...headings, 'seal of this table'], ...rows.map((row) => [...row, unsealed])];
  const table = stringify(sealed, { record_delimiter: '\r\n' });
  await makeFolder(out);
  const isOwn = ownTable(results.map(({ sha256 }) => sha256));
  await writeOutput(join(out, 'figures.csv'), table, { isOwn, force });
}
