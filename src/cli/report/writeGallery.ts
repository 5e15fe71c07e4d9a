import { join } from 'node:path';
import { galleryPage } from '../../entry/pages.ts';
import { version } from '../program.ts';
import { ownGallery } from '../writing/ownOutput.ts';
import { writeOutput } from '../writing/writeOutput.ts';
import { listSheets } from './listSheets.ts';
import { openPagePress } from './openPagePress.ts';

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
