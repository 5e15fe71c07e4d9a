import type { PlanKey } from '../../assay/options/option.ts';
import { planKeys } from '../../assay/options/optionLists.ts';
import type { Told } from '../../assay/options/options.ts';
import type { DecisionRule } from '../../judge/decide.ts';
import type { Instrument } from '../../measure/doubt/instrument.ts';
import type { UnitClaim } from '../claims/unitClaim.ts';
import type { ToldEnergy } from '../energyRun.ts';
import type { ToldStep, ToldTransfer } from '../measuredUnit.ts';
import type { ToldLoad } from '../sweep/benchPoint.ts';
import { type PlanPart, parsed, text } from './planPart.ts';
import type { Word, WrittenOptions, WrittenScale } from './planSchema.ts';

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
export interface CaptureOptions extends Omit<Partial<Told>, 'instrument'> {
  /** Figures of the measuring chain, or the path of a file that holds them. */
  readonly instrument?: Partial<Instrument> | string;
}

/** How a capture is read: what stands at this part, over what was inherited. */
export function captureOptions(part: PlanPart<WrittenOptions>, inherited: CaptureOptions): CaptureOptions {
  const told = planKeys
    .map((entry) => ({ entry, value: part.at(entry.key as never) as PlanPart<unknown> }))
    .filter(({ value }) => !value.isAbsent)
    .map(({ entry, value }) => [entry.option, toldAt(value, entry)]);
  return { ...inherited, ...Object.fromEntries(told) };
}

function toldAt(part: PlanPart<unknown>, { shape, example, parse }: PlanKey<unknown>): unknown {
  switch (shape) {
    case 'name':
      return text(part as PlanPart<Word>);
    case 'words':
      return parsed(part as PlanPart<Word>, example, parse ?? ((words) => words));
    case 'factors':
      return factorsOf(part.data as WrittenScale);
    case 'figures':
      return typeof part.data === 'object' ? part.data : text(part as PlanPart<Word>);
  }
}

/** One factor for the measured channel, or one for each channel named. */
function factorsOf(scale: WrittenScale): Told['scales'] {
  if (typeof scale === 'number') return [{ channel: null, factor: scale }];
  return Object.entries(scale).map(([channel, factor]) => ({ channel, factor }));
}
