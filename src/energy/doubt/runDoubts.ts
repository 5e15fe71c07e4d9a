import { type Component, nearEnds, within } from '../../measure/doubt/component.ts';
import type { Course } from '../runs/course.ts';
import { type Integral, type RunTime, standingHours } from '../runs/integrals.ts';
import type { Run } from '../runs/runs.ts';
import { type LogMeter, proportional } from './logMeter.ts';

/** What is known of a run, for the doubt of its sums. */
export interface RunSums {
  readonly course: Course;
  readonly run: Run;
  readonly time: RunTime;
  readonly meter: LogMeter;
  /** All holes of the course. */
  readonly holes: ReadonlySet<number>;
  /** Shape N, the run's own direction positive: W and A. */
  readonly watts: Float64Array | null;
  readonly amps: Float64Array | null;
  /** Of W and A; null where there are none. */
  readonly energy: Integral | null;
  readonly charge: Integral | null;
}

/**
 * What a run's energy may be off by, in Wh.
 *
 * Gain, offset and clock are one value for all rows, so that more rows do not help; a step of the readings is one
 * value for as long as they stand still (JCGM 100:2008, 5.2.2).
 */
export function energyDoubts(sums: RunSums): readonly Component[] {
  const { energy } = sums;
  if (energy === null) return [];
  return [...levelDoubts(sums), clock(sums, energy.sum), ...samplingDoubts(sums.run, energy, 'Wh')];
}

/** The same of its charge, in Ah. */
export function chargeDoubts(sums: RunSums): readonly Component[] {
  const { charge, course, run, time, meter } = sums;
  if (charge === null) return [];
  return [
    proportional('current gain', meter.currentGainPercent, '%', charge.sum / 100),
    within('current offset', meter.offsetA, 'A', time.total),
    resolution(
      'resolution of the amperes',
      course.steps.amps,
      'A',
      standingHours(run, time, course.amps!, null),
    ),
    clock(sums, charge.sum),
    ...samplingDoubts(run, charge, 'Ah'),
  ];
}

/** What the meter's levels do to the energy: what a mean power is off by as well. */
export function levelDoubts(sums: RunSums): readonly Component[] {
  const { course, run, time, meter, energy, amps } = sums;
  const gains = gainDoubts(sums, energy?.sum ?? 0);
  if (course.from === 'volts and amperes') {
    const hoursOf = (readings: Float64Array): number =>
      time.hours.reduce((sum, hours, i) => sum + hours * readings[run.first + i]!, 0);
    return [
      ...gains,
      within('voltage offset', meter.offsetV, 'V', hoursOf(amps!)),
      within('current offset', meter.offsetA, 'A', hoursOf(course.volts!)),
      ...resolutionDoubts(sums),
    ];
  }
  if (course.from === 'counter') return [...gains, ...resolutionDoubts(sums)];
  return [...gains, within('power offset', meter.offsetW, 'W', time.total), ...resolutionDoubts(sums)];
}

/** What the meter's gains do to an energy, or to what is in proportion to one. @param value - in Wh. */
export function gainDoubts({ course, meter }: RunSums, value: number): readonly Component[] {
  return course.from === 'volts and amperes'
    ? [
        proportional('voltage gain', meter.voltageGainPercent, '%', value / 100),
        proportional('current gain', meter.currentGainPercent, '%', value / 100),
      ]
    : [proportional('power gain', meter.powerGainPercent, '%', value / 100)];
}

/** What the steps of the readings do to a run's energy. */
export function resolutionDoubts({ course, run, time, amps }: RunSums): readonly Component[] {
  const { from, steps, volts } = course;
  if (from === 'counter') return [counterStep(course.counterStepWh)];
  if (from === 'volts and amperes')
    return [
      resolution('resolution of the volts', steps.volts, 'V', standingHours(run, time, volts!, amps)),
      resolution('resolution of the amperes', steps.amps, 'A', standingHours(run, time, course.amps!, volts)),
    ];
  const standing = standingHours(run, time, course.watts!, null);
  return [resolution('resolution of the watts', steps.watts, 'W', standing)];
}

/** The difference of two readings of a counter, each rounded: a triangle of deviation q/√6. @param runs - of them. */
export function counterStep(stepWh: number, runs = 1): Component {
  return {
    ...{ source: 'resolution of the counter', type: 'B', distribution: 'normal', unit: 'Wh', sensitivity: 1 },
    standardUncertainty: (stepWh * Math.sqrt(runs)) / Math.sqrt(6),
  };
}

/** A step q of readings: ± q/2 as often as not anywhere; of many that are off each for itself, a normal sum. */
function resolution(
  source: string,
  step: number,
  unit: string,
  { root, largest }: { readonly root: number; readonly largest: number },
): Component {
  const one = within(source, step / 2, unit, root);
  return largest > 0.8 * root ? one : { ...one, distribution: 'normal' };
}

function clock({ meter }: RunSums, sum: number): Component {
  return proportional('clock', meter.clockPpm, 'ppm', sum / 1e6);
}

/**
 * What may lie between rows. Edges come when they like, each for itself; those of a load that cycles may keep step
 * with the rows, and then all lie on one side.
 */
function samplingDoubts(run: Run, sums: Integral, unit: string): readonly Component[] {
  const { betweenRows, largestBetween, betweenRowsTogether, holes } = sums;
  const source = 'changes between rows';
  const between: Component =
    run.kind === 'cycling'
      ? nearEnds(source, betweenRowsTogether, unit, 1)
      : {
          ...within(source, betweenRows, unit, 1),
          distribution: largestBetween > 0.8 * betweenRows ? 'rectangular' : 'normal',
        };
  return holes > 0 ? [between, within('holes', holes, unit, 1)] : [between];
}
