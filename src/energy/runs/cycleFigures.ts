import { budgeted } from '../../measure/doubt/budget.ts';
import { within } from '../../measure/doubt/component.ts';
import { median } from '../../signal/statistics.ts';
import { gainDoubts, type RunSums, resolutionDoubts } from '../doubt/runDoubts.ts';
import { type LogFigure, none } from '../doubt/runFigures.ts';
import { usualLoad } from './rowStates.ts';

/** What a load that comes and goes costs. */
export interface CycleFigures {
  readonly periodS: LogFigure;
  /** Share of time with more than two steps of the meter. */
  readonly onPercent: LogFigure;
  /** Against the 95th percentile of power, drawn steadily. */
  readonly lostWh: LogFigure;
}

/**
 * Period, time on and lost energy of a run that cycles.
 *
 * @returns the rows that a cycle has, too.
 */
export function cycleFigures(sums: RunSums): {
  readonly figures: CycleFigures;
  readonly rowsPerCycle: number;
} {
  const { course, run, meter, energy } = sums;
  const { timesS, load, loadStep } = course;
  const rises = run.rises!;
  const cycles = rises.length - 1;
  const [first, last] = [rises[0]!, rises[cycles]!];
  const periodS = median(rises.slice(1).map((rise, i) => timesS[rise]! - timesS[rises[i]!]!));
  const rowS = (timesS[last]! - timesS[first]!) / (last - first);
  let rowsOn = 0;
  for (let row = first; row < last; row++) if (load[row]! > 2 * loadStep) rowsOn++;
  const onPercent = (100 * rowsOn) / (last - first);
  const rowsPerCycle = (last - first) / cycles;
  return {
    rowsPerCycle,
    figures: {
      // First and last rise are known to a row, of as many periods as lie between.
      periodS: budgeted(periodS, [
        within('rises between rows', rowS, 's', 1 / cycles),
        within(
          'rows of a period',
          Math.min(rowS / 2, Math.abs(periodS - (timesS[last]! - timesS[first]!) / cycles)),
          's',
          1,
        ),
        within('clock', meter.clockPpm, 'ppm', periodS / 1e6),
      ]),
      onPercent: budgeted(onPercent, [within('edges between rows', 100 / rowsPerCycle, '%', 1)]),
      lostWh: energy === null ? none(course.whyNoWatts ?? 'the log has no watts') : lost(sums, energy.sum),
    },
  };
}

function lost(sums: RunSums, energyWh: number): LogFigure {
  const { course, run, time, energy } = sums;
  const target = usualLoad(course, 1, run.first, run.last + 1);
  const value = target * time.total - energyWh;
  return budgeted(value, [
    ...gainDoubts(sums, value),
    ...resolutionDoubts(sums),
    within('changes between rows', energy!.betweenRowsTogether, 'Wh', 1),
  ]);
}
