import type { HalfCycleRms } from '../../figures/envelope/halfCycleRms.ts';
import type { LoadStep } from '../../figures/steps/loadStep.ts';
import { type CurveComparison, compareWithCurve } from './compareWithCurve.ts';
import { deviationsAfter } from './deviationsAfter.ts';
import type { DynamicCurve } from './dynamicCurve.ts';
import { dynamicCurves, type ToldStep } from './dynamicCurves.ts';

/** One step held against one curve: information, for a capture is no type test. */
export interface StepFinding extends CurveComparison {
  readonly curve: DynamicCurve;
}

export interface SteppedSupply {
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
