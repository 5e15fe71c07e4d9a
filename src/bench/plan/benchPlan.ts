import type { DecisionRule } from '../../judge/decide.ts';
import { parseNominal, type ToldNominal } from '../../judge/nominal/mainsNominals.ts';
import type { Instrument } from '../../measure/doubt/instrument.ts';
import { readInstrument } from '../../measure/doubt/readInstrument.ts';
import type { UnitClaim } from '../claims/unitClaim.ts';
import type { ToldEnergy } from '../energyRun.ts';
import type { ToldStep, ToldTransfer } from '../measuredUnit.ts';
import type { ToldLoad } from '../sweep/benchPoint.ts';
import { optionalText, type PlanPart, parsed, text } from './planPart.ts';

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

/** Keys that may stand in a plan, a unit or a capture. */
export const CAPTURE_OPTION_KEYS = ['nominal', 'voltage', 'current', 'scale', 'instrument'] as const;

/** How a capture is read: what stands at this part, over what was inherited. */
export function captureOptions(part: PlanPart, inherited: CaptureOptions): CaptureOptions {
  const nominal = part.at('nominal');
  const voltage = optionalText(part.at('voltage'), 'The name of the voltage channel', 'CH1');
  const current = optionalText(part.at('current'), 'The name of the current channel', 'CH2');
  const scale = part.at('scale');
  const instrument = part.at('instrument');
  return {
    ...inherited,
    ...(nominal.isAbsent
      ? {}
      : { nominal: parsed(nominal, 'The nominal voltage', '120V/60Hz', parseNominal) }),
    ...(voltage === undefined ? {} : { voltage }),
    ...(current === undefined ? {} : { current }),
    ...(scale.isAbsent ? {} : { scales: scalesOf(scale) }),
    ...(instrument.isAbsent ? {} : { instrument: instrumentOf(instrument) }),
  };
}

/** One factor for the measured channel, or one for each channel named. */
function scalesOf(part: PlanPart): NonNullable<CaptureOptions['scales']> {
  const { data } = part;
  if (typeof data !== 'object') return [{ channel: null, factor: factorOf(part) }];
  if (Array.isArray(data))
    throw part.wrong('A scale is a factor, or one for each channel.', '200, or CH1: 200');
  return Object.keys(data ?? {}).map((channel) => ({ channel, factor: factorOf(part.at(channel)) }));
}

function factorOf(part: PlanPart): number {
  const { data } = part;
  if (typeof data !== 'number' || !Number.isFinite(data) || data === 0)
    throw part.wrong('A scale is a number other than zero.', 'the ratio of the probe, such as 200');
  return data;
}

function instrumentOf(part: PlanPart): NonNullable<CaptureOptions['instrument']> {
  if (typeof part.data !== 'object') return text(part, 'The instrument file', 'scope.yaml');
  if (Array.isArray(part.data))
    throw part.wrong('An instrument is a file or "key: number" lines.', 'gainPercent: 3');
  // Key by key, so that a complaint gets the key's own line.
  for (const [key, value] of Object.entries(part.data ?? {})) {
    const line = `${JSON.stringify(key)}: ${JSON.stringify(value)}`;
    parsed({ ...part.at(key), data: line }, 'The instrument', 'gainPercent: 3', readInstrument);
  }
  return part.data as Exclude<CaptureOptions['instrument'], string | undefined>;
}
