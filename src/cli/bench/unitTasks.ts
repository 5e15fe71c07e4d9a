import { isWholeNominal, nominalOfUnit, outletClaims, unitNominal } from '../../entry/benching.ts';
import type { AssayOptions, MeasureResult } from '../../entry/measuring.ts';
import type { BenchPlan, CaptureOptions, PlannedUnit } from '../../entry/plans.ts';
import { type MeasureTask, measureFile } from '../measureFile.ts';
import type { InstrumentFiles } from './instrumentFiles.ts';
import { pathFrom } from './pathFrom.ts';

/** A capture of a plan, and how it is measured. */
export interface PlannedTask<PlannedCapture> {
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

export interface PlanContext {
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
  const nominal = await unitNominal(untold, async ({ task }): Promise<MeasureResult | null> => {
    const outcome = await measureFile(task.found, task.options);
    return 'failed' in outcome ? null : outcome.assays[0]!.result;
  });
  return nominal === null ? alone : tasksAgainst(unit, context, nominal);
}

function tasksAgainst(
  unit: PlannedUnit,
  { folder, rule, instruments }: PlanContext,
  nominal: MeasureResult['nominal'],
): UnitTasks {
  const asked = outletClaims(unit.claims);
  const tasksOf = <T extends PlannedUnit['transfers'][number]>(
    captures: readonly T[],
    toCheck: (capture: T) => Pick<AssayOptions, 'claims' | 'load'>,
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
    steps: tasksOf(unit.steps, () => ({})),
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
