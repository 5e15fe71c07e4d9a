import type { FactOf } from '../base/notice.ts';
import type { Outlet } from './nominal/mainsNominals.ts';
import type { WaveformKind } from './waveform/kinds.ts';

/** What to doubt of the outlet that a voltage is taken for, and of its scale. */
export type JudgeNotice = FactOf<JudgeNotices>;

export interface JudgeNotices {
  'dc.large': { meanV: number; acRmsV: number };
  /** `expectedHz`: as told; null: 50 or 60. */
  'frequency.suspect': { frequencyHz: number; expectedHz: number | null };
  'nominal.none': { others: readonly Outlet[] };
  'nominal.off': TakenFor;
  'nominal.other': TakenFor & { others: readonly Outlet[] };
  'scale.half': { rmsV: number; wholeV: number };
  'scale.suspect': {
    rmsV: number;
    proposals: readonly { readonly ratio: number; readonly landsOnV: number }[];
  };
}

/** What a wave was taken for; `off`: RMS over nominal less one, null where it lies near enough. */
interface TakenFor {
  nominal: Outlet;
  rmsV: number;
  off: number | null;
}

/** What a meter's reading and the file say of each other. */
export type MeterFact = FactOf<MeterFacts>;

export interface MeterFacts {
  'meter.average': { readingV: number; fileV: number; averageV: number; kind: WaveformKind };
  /** `isCredible`: within what good instruments may disagree by. */
  'meter.calibrated': { factor: number; isCredible: boolean };
  'meter.scale': { readingV: number; fileV: number; ratio: number };
}
