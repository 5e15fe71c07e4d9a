import { measureError } from './measureErrors.ts';
import type { Value } from './waveEstimate.ts';

/** A handheld meter on its AC range: its own accuracy and the last digit shown. */
const METER_REACH = 0.01;
/** Scope gain 3 %, probe 2 % and meter 1 %, the assumed half-widths, all to one side. */
const COMBINED_REACH = 0.06;

interface MeterReading {
  /** In volts, positive. */
  readonly readingV: number;
  /** Of the voltage channel, before any calibration by this reading. */
  readonly values: { readonly rms: Value; readonly acRms: Value; readonly averageResponding: Value };
  /** True where the meter counts DC in; most handheld meters do not. */
  readonly dcCoupled: boolean;
}

/** What a meter's reading says of the volts in the file. */
export interface MeterAnswer {
  readonly readingV: number;
  /** `scale`: near a round ratio, `--scale` is proposed; `average`: it looks like a meter that is not true-RMS;
   * `calibrated`: the gain was tied to it. */
  readonly answer: 'scale' | 'average' | 'calibrated';
  /** Meter over file: the proposed scale or the calibration factor. */
  readonly factor: number;
  /** What the file holds, and what a meter that is not true-RMS would show on it, V. */
  readonly fileV: number;
  readonly averageV: number;
}

/**
 * A multimeter's reading held against the wave that it was taken on.
 *
 * In this order: near a round ratio of the file's value the probe ratio is missing, and `scale` proposes it;
 * at what an average-responding meter shows on this wave, and not at its RMS, the meter is probably not
 * true-RMS, and `average` changes nothing; else `calibrated` gives the factor that ties the gain to the meter.
 *
 * @returns factor: for `scale` the round ratio, otherwise reading over file.
 * @throws MeasureError `meter.reading` when the reading is not a positive number, `meter.incomparable` when
 * the file holds no AC voltage to compare it with.
 * @remarks "At" means within 1 % where that tells the two kinds of meter apart, or else within the 6 % by which
 * scope, probe and meter may disagree. Where both kinds show the same within 1 %, as on a sine, no
 * reading can tell which it was, and calibrating by it does no harm.
 */
export function meterAnswer({ readingV, values, dcCoupled }: MeterReading): MeterAnswer {
  if (!(readingV > 0 && readingV < Number.POSITIVE_INFINITY))
    throw measureError('meter.reading', { readingV });
  const file = dcCoupled ? values.rms : values.acRms;
  if (file.value === null || file.value <= 0)
    throw measureError('meter.incomparable', { reason: file.value === null ? file.reason : null });
  const fileV = file.value;
  const averageV = values.averageResponding.value ?? fileV;

  const told = { readingV, fileV, averageV };
  const ratio =
    roundRatioNear(readingV / fileV, COMBINED_REACH) ?? roundRatioNear(readingV / averageV, COMBINED_REACH);
  if (ratio !== null) return { ...told, answer: 'scale', factor: ratio };
  const answer = looksAveraging(readingV, fileV, averageV) ? 'average' : 'calibrated';
  return { ...told, answer, factor: readingV / fileV };
}

function looksAveraging(readingV: number, fileV: number, averageV: number): boolean {
  if (isNear(averageV, fileV, METER_REACH)) return false;
  return [METER_REACH, COMBINED_REACH].some(
    (reach) => isNear(readingV, averageV, reach) && !isNear(readingV, fileV, reach),
  );
}

function isNear(a: number, b: number, reach: number): boolean {
  return Math.abs(a / b - 1) <= reach;
}

/** Probe, divider and transformer ratios in common use. */
export const ROUND_RATIOS: readonly number[] = [10, 20, 50, 100, 200, 500, 1000];

/**
 * The round ratio, or its inverse, that a factor is near.
 *
 * @param factor - positive.
 * @param reach - how far it may lie from the ratio, as a fraction of it; below 0.4, so that one fits at most.
 * @returns null where none is near; 1 is no round ratio.
 * @example roundRatioNear(98, 0.06) // 100
 */
function roundRatioNear(factor: number, reach: number): number | null {
  const near = ROUND_RATIOS.flatMap((ratio) => [ratio, 1 / ratio]).find(
    (ratio) => Math.abs(factor / ratio - 1) <= reach,
  );
  return near ?? null;
}
