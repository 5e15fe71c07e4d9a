import { type Component, within } from '../../measure/doubt/component.ts';
import type { Instrument } from '../../measure/doubt/instrument.ts';
import type { Course } from '../runs/course.ts';

/** What the meter of a log may be off by: half-widths of rectangular distributions. */
export interface LogMeter {
  readonly voltageGainPercent: number;
  readonly currentGainPercent: number;
  readonly powerGainPercent: number;
  readonly offsetV: number;
  readonly offsetA: number;
  readonly offsetW: number;
  readonly clockPpm: number;
}

/**
 * The meter of a log: what is told of it, the rest assumed.
 *
 * Assumed, common practice without a source: volts 0.5 % and a step, amperes 1 % and two steps, watts 1.5 % (2 % of
 * AC) and two steps, clock 100 ppm, or 0.5 % where the time is counted by rows.
 */
export function logMeter(course: Course, told: Partial<Instrument>): LogMeter {
  const { steps, side, clockByRows } = course;
  return {
    voltageGainPercent: told.voltageGainPercent ?? 0.5,
    currentGainPercent: told.currentGainPercent ?? 1,
    powerGainPercent: told.powerGainPercent ?? (side === 'ac' ? 2 : 1.5),
    offsetV: told.offsetV ?? steps.volts,
    offsetA: told.offsetA ?? 2 * steps.amps,
    offsetW: told.offsetW ?? 2 * steps.watts,
    clockPpm: told.clockPpm ?? (clockByRows ? 5000 : 100),
  };
}

/** What one meter does to all that it logs in proportion, so that it cancels in a ratio; its offsets and steps don't. */
const PROPORTIONAL = ['voltage gain', 'current gain', 'power gain', 'clock'] as const;

/** `within`, for what cancels in a ratio of two sums of one meter. */
export function proportional(
  source: (typeof PROPORTIONAL)[number],
  halfWidth: number,
  unit: string,
  sensitivity: number,
): Component {
  return within(source, halfWidth, unit, sensitivity);
}

export function isProportional({ source }: Component): boolean {
  return (PROPORTIONAL as readonly string[]).includes(source);
}
