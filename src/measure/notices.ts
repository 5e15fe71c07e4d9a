import type { FactOf, NoFacts } from '../base/notice.ts';
import type { Acquisition } from '../read/capture.ts';

/** What to doubt of a measured wave. */
export type MeasureNotice = FactOf<MeasureNotices>;
export type DigitiserNotice = FactOf<DigitiserNotices>;

export interface MeasureNotices extends DigitiserNotices {
  'acquisition.mode': { acquisition: Exclude<Acquisition, 'sample'> };
  'acquisition.pairs': NoFacts;
  'coupling.ac': NoFacts;
  /** `isPart`: the record is longer, and holds no more that is steady. */
  'cycles.few': { cycles: number; isPart: boolean };
  'efficiency.impossible': { percent: number };
  /** `line`: the strongest beside the fundamental; null where none stands out. */
  'frequency.unsteady': {
    doubtHz: number;
    line: { readonly apartHz: number; readonly ratio: number } | null;
    sampleRateHz: number;
  };
  'groups.frequency': { frequencyHz: number; cycles: number };
  'groups.unsynchronised': { movesPercent: number };
  'kind.fewCodes': { values: number };
  /** Null: of a DC input. */
  'power.negative': { activeW: number | null };
  'power.skew': { doubtS: number; doubtW: number };
  'rate.low': { reached: number; asked: number; neededHz: number };
  'rate.steps': { samplesPerCycle: number; neededHz: number };
  'resolution.coarse': { levels: number };
  /** `isNearHalf`: it lies in the top tenth below half the sample rate. */
  'ripple.alias': { rippleHz: number; sampleRateHz: number; neededHz: number; isNearHalf: boolean };
  'span.longest': { fromS: number; toS: number };
  /** `leftOutOf`: the channel out of which they were left before it was measured. */
  'value.outlier': {
    value: number;
    atS: number;
    more: number;
    leftOutOf?: { readonly name: string; readonly unit: string };
  };
  'wave.clipped': { ends: ClippedEnds };
  'wave.drifts': { percent: number };
}

export type ClippedEnds = 'top' | 'bottom' | 'both';

/** What can be set on the scope to use more of its digitiser. */
export interface DigitiserNotices {
  /** `perDivision`: null where the record does not reach the scope's own last code. */
  'digitiser.clipped': { ends: ClippedEnds; perDivision: number | null; unit: 'V' | 'A' };
  'digitiser.missingCodes': { missing: number; levels: number; isOfFile: boolean };
  'digitiser.noise': { noiseBits: number; bits: number };
  /** `divisions`: of the screen's height, as assumed. */
  'digitiser.range': {
    levelsUsed: number;
    levelsAvailable: number;
    perDivision: number;
    unit: 'V' | 'A';
    fillPercent: number;
    bitsAssumed: boolean;
    divisions: number;
  };
}
