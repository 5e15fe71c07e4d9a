import type { Notice, NoticeSource } from '../base/notice.ts';
import type { MeasureNotice } from '../measure/notices.ts';

/** All that a result may have to be doubted for. */
export type AssayNotice = (MeasureNotice | Notice) & NoticeSource;
