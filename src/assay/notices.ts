import type { ErrorData } from '../base/measureError.ts';
import type { FactOf, NoticeSource } from '../base/notice.ts';
import type { JudgeNotice } from '../judge/notices.ts';
import type { MeasureNotice } from '../measure/notices.ts';
import type { ReadNotice } from '../read/notices.ts';

/** All that a result may have to be doubted for. */
export type AssayNotice = (ReadNotice | MeasureNotice | JudgeNotice | FactOf<AssayNotices>) & NoticeSource;

/** What is doubted of a capture as a whole. */
export interface AssayNotices {
  /** `left`: others, which were not looked at. */
  'channels.currents': { channel: string; left: readonly string[] };
  /** Of several channels asked for, those that can't be measured. */
  'channels.unmeasured': { errors: readonly ErrorData[] };
  'current.noPeriod': { channel: string };
  /** Loads as their words say them. */
  'load.differs': { words: string; from: 'measured' | 'told' | 'file name'; measured: string };
  'phase.jump': { atS: number; degrees: number };
  /** `by`: what is unsteady elsewhere. */
  'span.steady': { by: 'current' | 'voltage'; fromS: number; toS: number };
}
