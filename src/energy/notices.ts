import type { FactOf, NoFacts } from '../base/notice.ts';
import type { LogNotice } from './log/notices.ts';

/** What a person must know of what was found in a log. */
export type EnergyNotice = LogNotice | FactOf<EnergyNotices>;

export interface EnergyNotices {
  /** @property seconds - that the counter takes each row for, whatever its clock says. */
  'counter.fixedStep': { name: string; ratioPercent: number; seconds: number };
  'counter.differs': { name: string; ratioPercent: number };
  'cycling.coarse': { rowsPerCycle: number };
  'direction.assumed': NoFacts;
  'efficiency.tooHigh': { percent: number };
  /** @property hours - of all of them together. */
  'holes.left': { holes: number; hours: number };
  'holes.counted': { holes: number; hours: number };
  /** What was taken for the meter that logged. */
  'logMeter.assumed': {
    measured: 'watts' | 'volts and amperes' | 'amperes';
    isAc: boolean;
    clockPpm: number;
  };
  'run.open': { kind: 'discharge' | 'charge' };
  'runs.several': { discharges: number; largestWh: number; togetherWh: number };
  'side.unknown': NoFacts;
  'total.differs': { place: 'head' | 'foot'; unit: 'Wh' | 'Ah'; value: number; ratioPercent: number };
}
