import type { MissingFigure } from '../base/figure.ts';
import type { FactOf, NoFacts, Reason } from '../base/notice.ts';
import type { WaveformKind } from '../judge/waveform/kinds.ts';

/** Why something of a bench test or a comparison can't be told, and what a unit's claim was judged by. */
export type BenchReason = FactOf<BenchReasons>;

export interface BenchReasons {
  'capture.noVoltage': NoFacts;
  'load.notSteady': NoFacts;
  'load.tooShort': NoFacts;
  'load.wentOff': NoFacts;
  'load.untold': NoFacts;
  'load.noCurrent': NoFacts;
  'voltage.none': NoFacts;
  'voltage.noneAtFullLoad': NoFacts;
  'sweep.noKnownLoad': NoFacts;
  'sweep.oneLoad': NoFacts;
  'sweep.noIdle': NoFacts;
  'line.tooFew': NoFacts;
  'onset.oneLoad': NoFacts;
  'onset.plateaus': { kind: WaveformKind };
  'onset.notUpTo': { loadW: number };
  'range.unknown': NoFacts;
  'range.keptUpTo': { loadW: number };
  'range.leftAtOnce': { loadW: number };
  'step.none': NoFacts;
  'transfer.none': NoFacts;
  'transfer.notBack': { in: 'record' | 'any' };
  'energy.noRun': NoFacts;
  'energy.noneAt': { side: 'DC side' | 'AC outlet' };
  'difference.noDoubt': NoFacts;
  /** Of a bound nothing is known but that the value isn't above it. */
  'difference.bound': { of: readonly ('A' | 'B')[] };
  /** Why either of two figures is missing; null: it is not. */
  'difference.missing': { a: Reason | null; b: Reason | null };
}

/** A figure that is missing, and why. */
export function lacking(reason: BenchReason): MissingFigure {
  return { value: null, reason };
}
