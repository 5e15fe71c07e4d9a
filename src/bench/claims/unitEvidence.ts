import type { DecisionRule } from '../../verdict/rule/decide.ts';
import type { BenchPoint, BenchStep, EnergyRun, VoltageRange } from '../benchDocument.ts';
import type { JudgedCapture } from './worstCapture.ts';

/** What all captures of a unit show, for judging its claims by. */
export interface UnitEvidence {
  readonly points: readonly BenchPoint[];
  readonly steps: readonly BenchStep[];
  readonly energy: readonly EnergyRun[];
  /** The claims that single captures judge: those of the sweep up to the rated load, and of transfers. */
  readonly judged: readonly JudgedCapture[];
  readonly range: VoltageRange | null;
  readonly rule: DecisionRule;
}
