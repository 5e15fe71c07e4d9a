import type { DynamicCurve } from './dynamicCurve.ts';
import { iec62040Dynamic } from './iec62040Dynamic.ts';
import { iec62109LoadStep } from './iec62109LoadStep.ts';
import { iso8528 } from './iso8528.ts';
import { itiCurve } from './itiCurve.ts';

export interface ToldStep {
  /** True where the person said that a resistive load went between nothing and full. */
  readonly isResistiveFullStep: boolean;
  /** Nominal voltage and frequency, where known. */
  readonly nominal: { readonly voltageV: number; readonly frequencyHz: number } | null;
}

/** The curves that a step can be held against, those written for the source itself first. */
export function dynamicCurves({ isResistiveFullStep, nominal }: ToldStep): readonly DynamicCurve[] {
  // The ITI curve is for 120 V, 120/208 V and 120/240 V at 60 Hz.
  const isNorthAmerican =
    nominal !== null && nominal.frequencyHz === 60 && [120, 208, 240].includes(nominal.voltageV);
  return [
    ...(isResistiveFullStep ? [iec62109LoadStep] : []),
    ...iso8528,
    ...iec62040Dynamic,
    ...(isNorthAmerican ? [itiCurve] : []),
  ];
}
