import { log10, powerOfTen } from '../../base/elementary.ts';
import type { TimeSettings } from '../head/timeSettings.ts';
import type { ReadNotice } from '../notices.ts';

/** The interval that the time column gives, and what the head says beside it. */
interface IntervalWitnesses {
  readonly intervalS: number;
  /** What the printed digits leave open of it. */
  readonly uncertaintyS: number;
  readonly sampleCount: number;
  readonly isUnitAssumed: boolean;
  readonly settings: TimeSettings;
}

interface ReconciledInterval {
  readonly intervalS: number;
  /** Times this, stamps in the unit of the header are in seconds at last: 1, or a power of 1000. */
  readonly unitCorrection: number;
  readonly notice: ReadNotice | null;
}

/** A head that prints its interval with three digits is right within this. */
const ROUNDED_WITHIN = 0.01;
/** Divisions that a record may cover. */
const LEAST_DIVISIONS = 4;
const MOST_DIVISIONS = 40;

/**
 * Decides between the interval of the time column and that of the head. They agree: the finer one. They
 * don't: the one that agrees with the record's stated span and count; without such a witness the column,
 * which has a count and a span of its own, unless its unit was only assumed and is off by a power of 1000.
 */
export function reconcileInterval(witnesses: IntervalWitnesses): ReconciledInterval {
  const { intervalS, uncertaintyS, settings, isUnitAssumed } = witnesses;
  const stated = settings.intervalS;
  if (stated === null) return unitFromSpan(witnesses);
  const ratio = stated / intervalS;
  if (Math.abs(stated - intervalS) <= 2 * uncertaintyS)
    return { intervalS: stated, unitCorrection: 1, notice: null };
  if (Math.abs(ratio - 1) <= ROUNDED_WITHIN) return { intervalS, unitCorrection: 1, notice: null };

  const power = powerOfThousand(ratio);
  const columnFits = fits(witnesses, intervalS);
  const statedFits = fits(witnesses, stated);
  if (statedFits > columnFits || (statedFits === columnFits && isUnitAssumed && power !== null)) {
    return {
      intervalS: power === null ? stated : intervalS * power,
      unitCorrection: power ?? 1,
      notice: disagreement(intervalS, stated, 'settings'),
    };
  }
  return { intervalS, unitCorrection: 1, notice: disagreement(intervalS, stated, 'column') };
}

/** No interval stated: a stated span still shows a unit that is off by a power of 1000. */
function unitFromSpan(witnesses: IntervalWitnesses): ReconciledInterval {
  const { intervalS, sampleCount, settings } = witnesses;
  const kept = { intervalS, unitCorrection: 1, notice: null };
  if (settings.spanS === null || fits(witnesses, intervalS) > 0) return kept;
  const power = powerOfThousand(settings.spanS / (intervalS * sampleCount));
  if (power === null) return kept;
  return {
    intervalS: intervalS * power,
    unitCorrection: power,
    notice: disagreement(intervalS, intervalS * power, 'settings'),
  };
}

function fits({ sampleCount, settings }: IntervalWitnesses, intervalS: number): number {
  return agreementsOf(settings, intervalS, sampleCount);
}

/** How many of the head's statements about the whole record an interval agrees with: 0, 1 or 2. */
export function agreementsOf(settings: TimeSettings, intervalS: number, sampleCount: number): number {
  const span = intervalS * (settings.sampleCount ?? sampleCount);
  const spanFits = settings.spanS !== null && Math.abs(span / settings.spanS - 1) < 0.02;
  const divisions = settings.secondsPerDivision === null ? 0 : span / settings.secondsPerDivision;
  return (spanFits ? 1 : 0) + (divisions > LEAST_DIVISIONS && divisions < MOST_DIVISIONS ? 1 : 0);
}

function powerOfThousand(ratio: number): number | null {
  const power = powerOfTen(3 * Math.round(log10(ratio) / 3));
  return power !== 1 && Math.abs(ratio / power - 1) < 0.02 ? power : null;
}

function disagreement(columnS: number, statedS: number, counts: 'column' | 'settings'): ReadNotice {
  return { code: 'time.disagrees', columnS, statedS, counts };
}
