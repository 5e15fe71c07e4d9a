import type { Assay } from '../verdict/assay.ts';
import type { MeasureResult } from '../verdict/measureDocument.ts';
import type { DecisionRule } from '../verdict/rule/decide.ts';
import type { TransferDirection } from './benchDocument.ts';
import type { UnitClaim } from './claims/unitClaim.ts';
import type { ToldEnergy } from './energy/energyRun.ts';
import type { ToldLoad } from './sweep/toldLoad.ts';

/** All that was told and measured of one unit. */
export interface MeasuredUnit {
  readonly name: string;
  readonly label: string;
  readonly claims: readonly UnitClaim[];
  readonly rule: DecisionRule;
  readonly sweep: readonly MeasuredCapture[];
  readonly steps: readonly MeasuredStep[];
  readonly transfers: readonly MeasuredTransfer[];
  readonly energy: readonly ToldEnergy[];
}

export interface MeasuredCapture extends Pick<Assay, 'result' | 'budgets'> {
  readonly told: ToldLoad;
  /** Where its own sheet was written. */
  readonly sheet?: string;
}

/** What a person tells of a capture of a transfer. */
export interface ToldTransfer {
  readonly note?: string;
  /** Of the first transfer in it; absent: not told. */
  readonly direction?: TransferDirection;
}

export interface MeasuredTransfer extends ToldTransfer {
  readonly result: MeasureResult;
}

/** What a person tells of a capture that holds a load step. */
export interface ToldStep {
  /** Null: not told. */
  readonly fromW: number | null;
  readonly toW: number | null;
  readonly resistive: boolean | null;
  readonly note?: string;
}

export interface MeasuredStep {
  readonly result: MeasureResult;
  readonly told: ToldStep;
}
