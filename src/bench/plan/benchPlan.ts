import type { PlanKey } from '../../assay/options/option.ts';
import { planKeys } from '../../assay/options/optionLists.ts';
import type { Told } from '../../assay/options/options.ts';
import type { DecisionRule } from '../../judge/decide.ts';
import type { Instrument } from '../../measure/doubt/instrument.ts';
import { readInstrument } from '../../measure/doubt/readInstrument.ts';
import type { UnitClaim } from '../claims/unitClaim.ts';
import type { ToldEnergy } from '../energyRun.ts';
import type { ToldStep, ToldTransfer } from '../measuredUnit.ts';
import type { ToldLoad } from '../sweep/benchPoint.ts';
import { type PlanPart, parsed, text } from './planPart.ts';

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

/** Keys that may stand in a plan, a unit or a capture. */
export const CAPTURE_OPTION_KEYS: readonly string[] = planKeys.map(({ key }) => key);

/** How a capture is read: what stands at this part, over what was inherited. */
export function captureOptions(part: PlanPart, inherited: CaptureOptions): CaptureOptions {
  const told = planKeys
    .map((entry) => ({ entry, value: part.at(entry.key) }))
    .filter(({ value }) => !value.isAbsent)
    .map(({ entry, value }) => [entry.option, toldAt(value, entry)]);
  return { ...inherited, ...Object.fromEntries(told) };
}

function toldAt(part: PlanPart, { shape, what, example, parse }: PlanKey<unknown>): unknown {
  switch (shape) {
    case 'name':
      return text(part, what, example);
    case 'words':
      return parsed(part, what, example, parse ?? ((words) => words));
    case 'factors':
      return factorsOf(part, what, example);
    case 'figures':
      return typeof part.data === 'object' ? figuresOf(part) : text(part, what, example);
  }
}

/** One factor for the measured channel, or one for each channel named. */
function factorsOf(part: PlanPart, what: string, example: string): Told['scales'] {
  const { data } = part;
  const factorOf = (at: PlanPart): number => {
    if (typeof at.data !== 'number' || !Number.isFinite(at.data) || at.data === 0)
      throw at.wrong(`${what} is a number other than zero.`, `the ratio of the probe, such as ${example}`);
    return at.data;
  };
  if (typeof data !== 'object') return [{ channel: null, factor: factorOf(part) }];
  if (Array.isArray(data))
    throw part.wrong(`${what} is a factor, or one for each channel.`, `${example}, or CH1: ${example}`);
  return Object.keys(data ?? {}).map((channel) => ({ channel, factor: factorOf(part.at(channel)) }));
}

function figuresOf(part: PlanPart): Partial<Instrument> {
  if (Array.isArray(part.data))
    throw part.wrong('An instrument is a file or "key: number" lines.', 'gainPercent: 3');
  // Key by key, so that a complaint gets the key's own line.
  for (const [key, value] of Object.entries(part.data ?? {})) {
    const line = `${JSON.stringify(key)}: ${JSON.stringify(value)}`;
    parsed({ ...part.at(key), data: line }, 'The instrument', 'gainPercent: 3', readInstrument);
  }
  return part.data as Partial<Instrument>;
}
