import type { AssayNotice } from '../assay/notices.ts';
import type { FactOf, NoFacts, Notice, NoticeSource } from '../base/notice.ts';
import type { LoadKindName } from '../judge/loadKind.ts';

/** What to doubt of a bench test as a whole; as an earlier document says it, in words already. */
export type BenchNotice = (AssayNotice | FactOf<BenchNotices> | Notice) & NoticeSource;

export interface BenchNotices {
  'bench.belowRating': { highestW: number; ratedW: number };
  'bench.loadKind': { file: string; kind: LoadKindName };
  /** `isMeasured`: of some captures the load was. */
  'bench.loadTold': { by: readonly ('told' | 'file name')[]; isMeasured: boolean };
  'bench.loadUnknown': { captures: number };
  'bench.noStep': { file: string };
  'bench.noTransfer': { file: string };
  'bench.scaleDiffers': { file: string; rmsV: number };
}

/** What makes two captures hard to compare. */
export type CompareNotice = FactOf<CompareNotices>;

export interface CompareNotices {
  'compare.budgets': NoFacts;
  'compare.load': { a: string | undefined; b: string | undefined };
  'compare.nominal': NoFacts;
  'compare.orders': { a: number | undefined; b: number | undefined };
  'compare.rate': NoFacts;
  'compare.same': NoFacts;
}
