import type { AssayNotice } from '../assay/notices.ts';
import type { Notice, NoticeSource } from '../base/notice.ts';

/** What to doubt of a bench test as a whole. */
export type BenchNotice = (AssayNotice | Notice) & NoticeSource;
