import { join } from 'node:path';
import { stringify } from 'csv-stringify/sync';
import type { MeasureResult } from '../../entry/measuring.ts';
import { figuresTable } from '../../entry/pages.ts';
import { version } from '../program.ts';
import { makeFolder } from '../writing/makeFolder.ts';
import { ownTable } from '../writing/ownOutput.ts';
import { unsealed } from '../writing/seal.ts';
import { writeOutput } from '../writing/writeOutput.ts';

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
