import type { Instrument } from '../measure/doubt/instrument.ts';
import type { LogFigure } from './doubt/runFigures.ts';
import type { EnergyAssay, RunResult } from './energyDocument.ts';
import type { EnergyLog } from './log/energyLog.ts';

/** What is told of a log. */
export interface LogTold {
  /** The unit under test. */
  readonly label?: string;
  /** What it is rated at, > 0. */
  readonly ratedWh?: number;
  readonly ratedAh?: number;
  /** What is known of the meter; the rest is assumed. */
  readonly instrument?: Partial<Instrument>;
}

/** One log from end to end; claims are not judged yet, for they may take another log as well. */
export interface LogAssay {
  readonly result: EnergyAssay<LogFigure>;
  readonly shown: LogShown;
}

/** What a log shows, for ratios and claims. */
export interface LogShown {
  readonly side: EnergyLog['side'];
  readonly runs: readonly ShownRun[];
}

export interface ShownRun extends RunResult<LogFigure> {
  /** The log ends, or has a hole, where the load is still on: there may be more to it than is seen. */
  readonly isOpen: boolean;
}
