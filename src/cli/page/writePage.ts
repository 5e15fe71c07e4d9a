import { readFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { MeasureError } from '../../entry/grammar.ts';
import { failureLine } from '../../entry/measuring.ts';
import { exitCodes } from '../exitCodes.ts';
import { failedResult } from '../measureFile.ts';
import { makeFolder } from '../writing/makeFolder.ts';
import { unwritable } from '../writing/unwritable.ts';
import { writeWhole } from '../writing/writeWhole.ts';

/** The flags of `page` as commander hands them over. */
export interface PageFlags {
  readonly out: string;
  readonly open?: boolean;
  readonly force?: boolean;
}

/** Writes the offline page that the build made, says where, and opens it where that is asked. */
export async function writePage({ out, open = false, force = false }: PageFlags): Promise<void> {
  const page = await readFile(new URL('../../page/sineassay.html', import.meta.url));
  try {
    if (!force) await refuseForeign(out);
    await makeFolder(dirname(out));
    await writeWhole(out, page);
  } catch (problem) {
    if (!(problem instanceof MeasureError)) throw problem;
    process.stderr.write(`${failureLine(failedResult(out, problem))}\n`);
    process.exitCode = exitCodes.usage;
    return;
  }
  process.stdout.write(`Page: ${out}\n`);
  if (!open) return;
  const { default: openInBrowser } = await import('open');
  const browser = await openInBrowser(resolve(out));
  browser.once('error', () => process.stderr.write(`No browser could be started: open ${out} yourself.\n`));
}

/** @throws MeasureError `file.exists` where a file stands there that is no such page; `file.unwritable`. */
async function refuseForeign(path: string): Promise<void> {
  const there = await readFile(path, 'utf8').catch((problem: NodeJS.ErrnoException) => {
    if (problem.code === 'ENOENT') return null;
    throw unwritable(path, problem);
  });
  if (there === null || there.includes('<title>Sineassay: is it a sine?</title>')) return;
  throw new MeasureError('file.exists', 'The file is there already, and is no page of sineassay.', {
    expected: 'a free name, or an earlier page',
    advice: 'Name another file with --out, or replace it with --force',
  });
}
