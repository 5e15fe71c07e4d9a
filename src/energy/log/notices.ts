import type { FactOf } from '../../base/notice.ts';
import type { ReadNotices } from '../../read/notices.ts';

/** What a person must know of how a log was read. */
export type LogNotice = FactOf<LogNotices & Pick<ReadNotices, 'rows.cut' | 'rows.malformed'>>;

export interface LogNotices {
  /** `lines`: the first few where it happens. */
  'clock.back': { lines: readonly number[]; times: number };
  /** Rows whose stamp repeats the one before, spread evenly inside what a stamp can tell apart. */
  'clock.equal': { rows: number; stepS: number };
}
