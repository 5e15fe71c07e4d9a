import type { Notice } from '../../base/notice.ts';
import type { HeadLine } from '../../bytes/table.ts';

/** The word itself: as a part of a name, of a file or a folder, it says nothing. */
const INVENTED = /(?<![\w./\\-])invented(?![\w/\\-]|\.\w)/i;

/**
 * A file that says of itself that its data are invented is passed on as such: nobody should take a demonstration for
 * a measurement.
 *
 * @returns one notice, or none.
 */
export function inventedNotice(lines: readonly HeadLine[]): readonly Notice[] {
  if (!lines.some(({ text }) => INVENTED.test(text))) return [];
  return [{ code: 'data.invented', message: 'The file says that its data are invented, for demonstration.' }];
}
