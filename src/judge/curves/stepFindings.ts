import type { HalfCycleRms } from '../../measure/envelope.ts';
import type { LoadStep } from '../../measure/steps/loadStep.ts';
import type { CurvePoint, DynamicCurve } from './dynamicCurve.ts';
import { dynamicCurves, type ToldStep } from './dynamicCurves.ts';

/** One step held against one curve: information, for a capture is no type test. */
export interface StepFinding extends CurveComparison {
  readonly curve: DynamicCurve;
}

interface SteppedSupply {
  readonly envelope: HalfCycleRms;
  readonly step: LoadStep;
  /** The record's end, or the next step, on the file's own axis. */
  readonly untilS: number;
}

/**
 * A load step against every published curve that fits it.
 *
 * @returns nothing where no nominal is known: the curves are in % of it.
 */
export function stepFindings(
  { envelope, step, untilS }: SteppedSupply,
  told: ToldStep,
): readonly StepFinding[] {
  const { nominal } = told;
  if (nominal === null) return [];
  return dynamicCurves(told).flatMap((curve) => {
    const isVoltage = curve.quantity === 'RMS voltage';
    const levels = isVoltage
      ? { nominal: nominal.voltageV, before: step.before.value, after: step.after.value }
      : { nominal: nominal.frequencyHz, before: step.beforeHz.value, after: step.afterHz.value };
    const about = levels[curve.about];
    if (about === null) return [];
    const deviations = deviationsAfter(envelope, isVoltage ? 'rms' : 'frequencyHz', {
      ...{ atS: step.atS.value, untilS, nominal: levels.nominal, about },
    });
    const comparison = compareWithCurve(curve, deviations);
    return comparison === null ? [] : [{ curve, ...comparison }];
  });
}

/** The event, and the levels that deviations are taken from and given in % of. */
interface EventLevels {
  readonly atS: number;
  /** The record's end, or the next event. */
  readonly untilS: number;
  readonly nominal: number;
  /** The level that the curve is about. */
  readonly about: number;
}

/**
 * What an envelope does after an event, ready to hold against a curve.
 *
 * @param quantity - which of the envelope's arrays.
 * @returns only cycles that lie whole after the event: one that straddles it belongs to neither side.
 */
function deviationsAfter(
  envelope: HalfCycleRms,
  quantity: 'rms' | 'frequencyHz',
  { atS, untilS, nominal, about }: EventLevels,
): Deviations {
  const { timeS, frequencyHz } = envelope;
  const chosen = Array.from(timeS.keys()).filter(
    (k) => timeS[k]! - 0.5 / frequencyHz[k]! >= atS && timeS[k]! <= untilS,
  );
  return {
    afterS: Float64Array.from(chosen, (k) => timeS[k]! - atS),
    percent: Float64Array.from(chosen, (k) => (100 * (envelope[quantity][k]! - about)) / nominal),
  };
}

/** A quantity's deviations after an event. Arrays of one shape. */
interface Deviations {
  /** Seconds after the event, ascending; the values whose windows reach before the event left out. */
  readonly afterS: Float64Array;
  /** From the curve's own level, in % of nominal. */
  readonly percent: Float64Array;
}

interface CurveComparison {
  readonly side: 'inside' | 'outside';
  /** Where the quantity comes nearest to a limit, or farthest past one. */
  readonly worst: {
    readonly afterS: number;
    readonly percent: number;
    readonly limitPercent: number;
    /** Distance to the limit in % of nominal; negative outside. */
    readonly marginPercent: number;
  };
  /** False where the record ends before the curve's last limit begins: then inside is only so far. */
  readonly reachesEnd: boolean;
}

/**
 * Hold deviations against a curve.
 *
 * @returns null where the record shows nothing at any time that the curve limits.
 */
export function compareWithCurve(curve: DynamicCurve, deviations: Deviations): CurveComparison | null {
  const { afterS, percent } = deviations;
  let worst: CurveComparison['worst'] | null = null;
  for (let k = 0; k < afterS.length; k++) {
    for (const [points, sign] of [
      [curve.upper, 1],
      [curve.lower, -1],
    ] as const) {
      const limitPercent = limitAt(points, afterS[k]!);
      if (limitPercent === null) continue;
      const marginPercent = sign * (limitPercent - percent[k]!);
      if (worst === null || marginPercent < worst.marginPercent) {
        worst = { afterS: afterS[k]!, percent: percent[k]!, limitPercent, marginPercent };
      }
    }
  }
  if (worst === null) return null;
  const lastLimitS = Math.max(curve.upper.at(-1)?.afterS ?? 0, curve.lower.at(-1)?.afterS ?? 0);
  return {
    side: worst.marginPercent >= 0 ? 'inside' : 'outside',
    worst,
    reachesEnd: (afterS.at(-1) ?? 0) >= lastLimitS,
  };
}

/** The limit that holds at a time after the event; null where there is none. */
export function limitAt(points: readonly CurvePoint[], afterS: number): number | null {
  return points.findLast((point) => point.afterS <= afterS)?.percent ?? null;
}
