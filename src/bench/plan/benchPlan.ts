import type { Instrument } from '../../figures/uncertainty/instrument.ts';
import type { ToldNominal } from '../../verdict/nominal/mainsNominals.ts';
import type { DecisionRule } from '../../verdict/rule/decide.ts';
import type { UnitClaim } from '../claims/unitClaim.ts';
import type { ToldEnergy } from '../energy/energyRun.ts';
import type { ToldStep, ToldTransfer } from '../measuredUnit.ts';
import type { ToldLoad } from '../sweep/toldLoad.ts';

/** A bench test as a person lays it out: units, claims, captures. */
export interface BenchPlan {
  readonly units: readonly PlannedUnit[];
  /** Documents of earlier bench tests to put beside these, as paths in the plan. */
  readonly earlier: readonly string[];
  readonly rule: DecisionRule;
}

export interface PlannedUnit {
  /** Unique in the plan, told apart without regard to case. */
  readonly name: string;
  readonly label: string;
  readonly claims: readonly UnitClaim[];
  readonly captures: readonly (PlannedFile & { readonly told: ToldLoad; readonly load?: string })[];
  readonly steps: readonly (PlannedFile & { readonly told: ToldStep })[];
  readonly transfers: readonly (PlannedFile & ToldTransfer)[];
  readonly energy: readonly ToldEnergy[];
}

export interface PlannedFile {
  /** As in the plan: relative to its folder. */
  readonly file: string;
  readonly options: CaptureOptions;
}

/** How captures are read; what a capture leaves out its unit says, else the plan. */
export interface CaptureOptions {
  readonly nominal?: ToldNominal;
  /** Name of the voltage channel. */
  readonly voltage?: string;
  /** Name of the current channel. */
  readonly current?: string;
  readonly scales?: readonly { readonly channel: string | null; readonly factor: number }[];
  /** Figures of the measuring chain, or the path of a file that holds them. */
  readonly instrument?: Partial<Instrument> | string;
}
