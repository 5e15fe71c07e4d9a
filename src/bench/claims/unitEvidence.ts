import type { DecisionRule } from '../../verdict/rule/decide.ts';
import type { BenchTransfer, EnergyRun, VoltageRange } from '../benchDocument.ts';
import type { ShownLoad } from '../loads/shownLoad.ts';
import type { JudgedCapture } from './worstCapture.ts';

/** What all captures of a unit show, for judging its claims by. */
export interface UnitEvidence {
  /** Of captures at a steady load and of load steps. */
  readonly loads: readonly ShownLoad[];
  readonly transfers: readonly BenchTransfer[];
  readonly energy: readonly EnergyRun[];
  /** The claims that single captures judge: those of the sweep up to the rated load, and of transfers. */
  readonly judged: readonly JudgedCapture[];
  readonly range: VoltageRange | null;
  readonly rule: DecisionRule;
}
