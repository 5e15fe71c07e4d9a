import { budgeted } from '../../measure/doubt/budget.ts';
import { type LogFigure, none } from '../doubt/runFigures.ts';
import type { RunResult } from '../energyDocument.ts';

/** What a unit takes for itself, with nothing on its outlet. */
interface IdleFigures {
  readonly powerW: LogFigure;
  /** In how many hours that empties it. */
  readonly emptiesInH: LogFigure;
  /** After how long it switches itself off. */
  readonly autoOffAfterS: LogFigure;
}

/**
 * The self-use of a unit in a run of kind idle.
 *
 * @param next - the run that follows without a hole; absent: none does.
 * @param runs - all of the log: without a rating, its largest discharge is what there is to empty.
 */
export function idleFigures(
  run: RunResult<LogFigure>,
  next: RunResult<LogFigure> | undefined,
  runs: readonly RunResult<LogFigure>[],
  ratedWh: number | undefined,
): IdleFigures {
  const discharges = runs.flatMap(({ kind, energyWh }) =>
    kind === 'discharge' && energyWh.value !== null ? [energyWh.value] : [],
  );
  const storedWh = ratedWh ?? (discharges.length > 0 ? Math.max(...discharges) : null);
  return {
    powerW: run.meanPowerW,
    emptiesInH: hoursToEmpty(run.meanPowerW, storedWh),
    autoOffAfterS: next?.kind === 'off' ? run.durationS : none('it does not switch itself off in this log'),
  };
}

function hoursToEmpty(power: LogFigure, storedWh: number | null): LogFigure {
  if (power.value === null) return power;
  if (storedWh === null) return none('how much it holds is not known: tell its rating with --rated');
  if (power.value <= power.uncertainty) return none('the idle power can’t be told from nothing');
  const value = storedWh / power.value;
  return budgeted(
    value,
    power.budget.components.map((component) => ({
      ...component,
      sensitivity: (-component.sensitivity * value) / power.value,
    })),
  );
}
