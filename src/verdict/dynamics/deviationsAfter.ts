import type { HalfCycleRms } from '../../figures/envelope/halfCycleRms.ts';
import type { Deviations } from './compareWithCurve.ts';

/** The event, and the levels that deviations are taken from and given in % of. */
export interface EventLevels {
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
export function deviationsAfter(
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
