import { readFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { MeasureError } from '../../entry/grammar.ts';
import { failureLine } from '../../entry/measuring.ts';
import { exitCodes } from '../failures.ts';
import { failedResult } from '../measureFile.ts';
import { ownPage } from '../writing/ownOutput.ts';
import { makeFolder, writeOutput } from '../writing/writeOutput.ts';

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
    await makeFolder(dirname(out));
    await writeOutput(out, page, { isOwn: ownPage, own: 'an earlier page', force });
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
