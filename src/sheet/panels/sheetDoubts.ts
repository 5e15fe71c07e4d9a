import type { Notice } from '../../base/notice.ts';
import { rankNotices } from '../answer/rankNotices.ts';

/** What a sheet says under "What to doubt", worst first; that data are invented stands at its head already. */
export function sheetDoubts(notices: readonly Notice[]): string[] {
  return rankNotices(notices.filter(({ code }) => code !== 'data.invented')).map(({ message }) => message);
}
