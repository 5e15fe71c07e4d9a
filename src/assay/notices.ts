import type { FactOf, Notice, NoticeSource } from '../base/notice.ts';
import type { JudgeNotice } from '../judge/notices.ts';
import type { MeasureNotice } from '../measure/notices.ts';

/** All that a result may have to be doubted for. */
export type AssayNotice = (MeasureNotice | JudgeNotice | FactOf<AssayNotices> | Notice) & NoticeSource;

/** What is doubted of a capture as a whole. */
export interface AssayNotices {
  /** `left`: others, which were not looked at. */
  'channels.currents': { channel: string; left: readonly string[] };
  'current.noPeriod': { channel: string };
  /** Loads as their words say them. */
  'load.differs': { words: string; from: 'measured' | 'told' | 'file name'; measured: string };
  'phase.jump': { atS: number; degrees: number };
  /** `by`: what is unsteady elsewhere. */
  'span.steady': { by: 'current' | 'voltage'; fromS: number; toS: number };
}
