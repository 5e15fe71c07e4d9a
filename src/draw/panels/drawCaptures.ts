import { fileName } from '../../words/text.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { cutText, type Panel, textWidth, writeHeading, writeText } from '../paper/writeText.ts';

/** A capture that a sheet was drawn from. */
export interface ListedCapture {
  readonly file: string;
  readonly sha256: string;
  /** What it is of: `300 W`. */
  readonly of: string;
}

const columns = 3;
const mostRows = 4;
const rowHeight = 28;
const headingHeight = 20;

/** Height of the list, from its heading's baseline to its last baseline. */
export function capturesHeight(count: number): number {
  const rows = Math.min(mostRows, Math.ceil(count / columns));
  return rows === 0 ? 0 : headingHeight + (rows - 1) * rowHeight + 13;
}

/**
 * The captures with their digests, by which a reader can check the sheet, in three columns.
 *
 * @param y - the heading's baseline.
 */
export function drawCaptures(panel: Panel, captures: readonly ListedCapture[], y: number): void {
  if (captures.length === 0) return;
  const most = columns * mostRows;
  const hidden = captures.length - most;
  const aside = `name and SHA-256 of each${hidden > 0 ? `; ${hidden} more in the bench document` : ''}`;
  writeHeading(panel, 'Captures', aside, page.left, y, page.contentWidth);
  const shown = captures.slice(0, most);
  const rows = Math.ceil(shown.length / columns);
  shown.forEach(({ file, sha256, of }, i) => {
    const column = Math.floor(i / rows) as 0 | 1 | 2;
    const x = page.columnX(column);
    const at = y + headingHeight + (i % rows) * rowHeight;
    const subject = cutText(of, 0.5 * page.columnWidth, 13, 600);
    writeText(panel, subject, x, at, { sizePx: 13, weight: 600 });
    const nameX = x + (subject === '' ? 0 : textWidth(subject, 13, 600) + 8);
    const room = x + page.columnWidth - nameX;
    writeText(panel, cutText(fileName(file), room, 13), nameX, at, { sizePx: 13, ink: palette.soft });
    const digest = cutText(sha256, page.columnWidth, 12);
    writeText(panel, digest, x, at + 13, { sizePx: 12, ink: palette.soft });
  });
}
