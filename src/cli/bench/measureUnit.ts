import {
  isResistiveFullStep,
  isWholeNominal,
  type MeasuredUnit,
  nominalOfUnit,
  outletClaims,
  type ToldTransfer,
  unitNominal,
} from '../../entry/benching.ts';
import {
  type CarriedCapture,
  type CarriedUnit,
  carryOptions,
  publishedOptions,
} from '../../entry/evidence.ts';
import {
  type Assay,
  type AssayOptions,
  type AssayResult,
  type FailedResult,
  MeasureError,
} from '../../entry/measuring.ts';
import type { BenchPlan, CaptureOptions, PlannedUnit } from '../../entry/plans.ts';
import {
  type FileOutcome,
  failedResult,
  type MeasureFileOptions,
  type MeasureTask,
  measureFile,
} from '../measureFile.ts';
import type { WriteSheet } from '../report/sheetWriter.ts';
import { type InstrumentFiles, pathFrom } from './namedPlan.ts';

export interface UnitRun {
  readonly measured: MeasuredUnit;
  /** What was told of it, with the captures that could be measured. */
  readonly told: CarriedUnit;
  readonly failures: readonly FailedResult[];
}

interface UnitRunOptions {
  readonly rule: BenchPlan['rule'];
  /** Of the unit's tasks, in their order; others may follow. */
  readonly outcomes: AsyncIterator<FileOutcome, unknown, undefined>;
  /** Writes the sheet of one capture and says where; absent: none is wanted. */
  readonly writeSheet?: WriteSheet;
  /** The same for captures of a step or a transfer; absent: as `writeSheet`. */
  readonly writeChange?: WriteSheet;
}

type MeasuredOne = { readonly assay: Assay; readonly sheet?: string; readonly carried: CarriedCapture };

/** Takes the outcomes of a unit's captures; one that can't be read is a failure beside the others. */
export async function measureUnit(tasks: UnitTasks, run: UnitRunOptions): Promise<UnitRun> {
  const { name, label, claims, energy } = tasks.unit;
  const { rule, outcomes, writeSheet, writeChange = writeSheet } = run;
  const failures: FailedResult[] = [];

  /** Those that could be measured, each with what was planned of it. */
  const measureAll = async <T>(
    planned: readonly PlannedTask<T>[],
    write: WriteSheet | undefined,
  ): Promise<readonly { readonly capture: T; readonly done: MeasuredOne }[]> => {
    const measured = [];
    for (const { capture, task } of planned) {
      const { value: outcome, done: ended } = await outcomes.next();
      if (ended) throw new Error('fewer outcomes than captures');
      if ('failed' in outcome) {
        failures.push(outcome.failed);
        continue;
      }
      const assay = outcome.assays[0]!;
      const sheet = await written(write, assay, outcome.options);
      const { file } = task.found;
      const carried = {
        file,
        sha256: assay.result.sha256,
        options: publishedOptions(carryOptions(outcome.options), assay.result),
      };
      measured.push({ capture, done: { assay, carried, ...(sheet === undefined ? {} : { sheet }) } });
    }
    return measured;
  };

  /** Where the sheet was written; undefined where none is wanted, or it could not be: the result still stands. */
  const written = async (
    write: WriteSheet | undefined,
    assay: Assay,
    options: MeasureFileOptions,
  ): Promise<string | undefined> => {
    try {
      return await write?.(assay, options);
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      failures.push(failedResult(assay.result.file, error));
      return undefined;
    }
  };

  const sweep = await measureAll(tasks.sweep, writeSheet);
  const steps = await measureAll(tasks.steps, writeChange);
  const transfers = await measureAll(tasks.transfers, writeChange);
  const measured = {
    ...{ name, label, claims, rule, energy },
    sweep: sweep.map(({ capture: { told }, done: { assay, sheet } }) => ({
      ...{ result: assay.result, budgets: assay.budgets, told },
      ...(sheet === undefined ? {} : { sheet }),
    })),
    steps: steps.map(({ capture: { told }, done }) => ({ result: done.assay.result, told })),
    transfers: transfers.map(({ capture, done }) => ({
      result: done.assay.result,
      ...toldTransfer(capture),
    })),
  };
  const told = {
    ...{ name, label, rule, energy },
    claims: claims.map(({ text }) => text),
    sweep: sweep.map(({ capture, done }) => ({ ...done.carried, told: capture.told })),
    steps: steps.map(({ capture, done }) => ({ ...done.carried, told: capture.told })),
    transfers: transfers.map(({ capture, done }) => ({ ...done.carried, ...toldTransfer(capture) })),
  };
  return { measured, told, failures };
}

function toldTransfer({ note, direction }: ToldTransfer): ToldTransfer {
  return { ...(note === undefined ? {} : { note }), ...(direction === undefined ? {} : { direction }) };
}

/** A capture of a plan, and how it is measured. */
interface PlannedTask<PlannedCapture> {
  readonly capture: PlannedCapture;
  readonly task: MeasureTask;
}

/** All captures of a unit, but those whose instrument file could not be read. */
export interface UnitTasks {
  readonly unit: PlannedUnit;
  readonly sweep: readonly PlannedTask<PlannedUnit['captures'][number]>[];
  readonly steps: readonly PlannedTask<PlannedUnit['steps'][number]>[];
  readonly transfers: readonly PlannedTask<PlannedUnit['transfers'][number]>[];
}

interface PlanContext {
  /** That the paths of the plan start from. */
  readonly folder: string;
  readonly rule: BenchPlan['rule'];
  readonly instruments: InstrumentFiles['instruments'];
}

/** What is to be measured of a unit, all of it against one nominal: that of its lightest load where none was told. */
export async function unitTasks(unit: PlannedUnit, context: PlanContext): Promise<UnitTasks> {
  const alone = tasksAgainst(unit, context, null);
  const captures = [
    ...alone.sweep.map(({ capture, task }) => ({ loadW: capture.told.loadW, task })),
    ...[...alone.steps, ...alone.transfers].map(({ task }) => ({ loadW: null, task })),
  ].map((one) => ({ ...one, file: one.task.found.file }));
  // A capture whose own nominal was told shows that one and not the unit's.
  const untold = captures.filter(({ task: { options } }) => !isWholeNominal(options.nominal ?? {}));
  const nominal = await unitNominal(untold, async ({ task }): Promise<AssayResult | null> => {
    const outcome = await measureFile(task.found, task.options);
    return 'failed' in outcome ? null : outcome.assays[0]!.result;
  });
  return nominal === null ? alone : tasksAgainst(unit, context, nominal);
}

function tasksAgainst(
  unit: PlannedUnit,
  { folder, rule, instruments }: PlanContext,
  nominal: AssayResult['nominal'],
): UnitTasks {
  const asked = outletClaims(unit.claims);
  const tasksOf = <T extends PlannedUnit['transfers'][number]>(
    captures: readonly T[],
    toCheck: (capture: T) => Pick<AssayOptions, 'claims' | 'load' | 'isResistiveFullStep'>,
  ): readonly PlannedTask<T>[] =>
    captures.flatMap((capture) => {
      const told = assayOptions(capture.options, instruments, asked.nominal);
      if (told === null) return [];
      const options = {
        ...told,
        nominal: nominalOfUnit(told.nominal ?? {}, nominal),
        label: unit.label,
        rule,
        ...toCheck(capture),
      };
      return [{ capture, task: { found: { file: pathFrom(folder, capture.file) }, options } }];
    });
  return {
    unit,
    sweep: tasksOf(unit.captures, ({ load }) => ({
      claims: asked.sweep,
      ...(load === undefined ? {} : { load }),
    })),
    steps: tasksOf(unit.steps, ({ told }) =>
      isResistiveFullStep(told, unit.claims) ? { isResistiveFullStep: true } : {},
    ),
    transfers: tasksOf(unit.transfers, () => ({ claims: asked.transfers })),
  };
}

/** In the order in which a unit's captures are measured. */
export function inOrder({ sweep, steps, transfers }: UnitTasks): readonly MeasureTask[] {
  return [...sweep, ...steps, ...transfers].map(({ task }) => task);
}

/** What a plan says of one capture. @returns null where its instrument file could not be read. */
function assayOptions(
  { instrument, nominal, ...others }: CaptureOptions,
  instruments: InstrumentFiles['instruments'],
  claimed: NonNullable<AssayOptions['nominal']>,
): AssayOptions | null {
  const options = { ...others, nominal: { ...claimed, ...nominal } };
  if (instrument === undefined) return options;
  if (typeof instrument !== 'string') return { ...options, instrument };
  const read = instruments.get(instrument);
  return read === undefined ? null : { ...options, instrument: read };
}
