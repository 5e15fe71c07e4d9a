import { MeasureError } from '../base/measureError.ts';
import type { WaveFigures } from '../measure/waveFigures.ts';
import { roundRatioNear } from './nominal/inferNominal.ts';
import type { Waveform } from './waveform/waveform.ts';

/** A handheld meter on its AC range: its own accuracy and the last digit shown. */
const METER_REACH = 0.01;
/** Scope gain 3 %, probe 2 % and meter 1 %, the assumed half-widths, all to one side. */
const COMBINED_REACH = 0.06;
/** More than twice the combined doubt: no good instruments, set as they should be, disagree so far. */
const CREDIBLE_REACH = 0.15;

interface MeterReading {
  /** In volts, positive. */
  readonly readingV: number;
  /** Of the voltage channel, before any calibration by this reading. */
  readonly figures: WaveFigures;
  readonly waveform: Waveform;
  /** True where the meter counts DC in; most handheld meters do not. */
  readonly dcCoupled: boolean;
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
export function compareMeter({ readingV, figures, waveform, dcCoupled }: MeterReading): MeterComparison {
  if (!(readingV > 0 && readingV < Number.POSITIVE_INFINITY))
    throw new MeasureError('meter.reading', 'The meter reading must be a voltage above zero.', {
      received: String(readingV),
      advice: 'Give what the meter showed, in volts, for example --meter 119.6.',
    });
  const file = dcCoupled ? figures.rms : figures.acRms;
  if (file.value === null || file.value <= 0)
    throw new MeasureError(
      'meter.incomparable',
      'There is no AC voltage in the file to hold the meter against.',
      {
        ...(file.value === null ? { received: file.reason } : {}),
        advice: 'Leave the meter reading out, or take it on the channel that carries the wave.',
      },
    );
  const fileV = file.value;
  const averageV = figures.averageResponding.value ?? fileV;

  const ratio =
    roundRatioNear(readingV / fileV, COMBINED_REACH) ?? roundRatioNear(readingV / averageV, COMBINED_REACH);
  if (ratio !== null)
    return { readingV, answer: 'scale', factor: ratio, message: scaleMessage(readingV, fileV, ratio) };

  const factor = readingV / fileV;
  if (looksAveraging(readingV, fileV, averageV))
    return {
      readingV,
      answer: 'average',
      factor,
      message: averageMessage(readingV, fileV, averageV, waveform),
    };
  return { readingV, answer: 'calibrated', factor, message: calibratedMessage(factor) };
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

function scaleMessage(readingV: number, fileV: number, ratio: number): string {
  return `The probe's ratio is probably missing: the meter shows ${inVolts(readingV)}, the file ${inVolts(fileV)}, about ${ratio} times less. Set --scale ${ratio} (times any scale already set) and give the reading again. Nothing was changed.`;
}

function averageMessage(readingV: number, fileV: number, averageV: number, { kind }: Waveform): string {
  const wave = kind === 'not classified' ? 'this wave' : `this ${kind}`;
  return `The meter is probably not true-RMS: it shows ${inVolts(readingV)}, and on ${wave} one that is not would show about ${inVolts(averageV)}; the true RMS in the file is ${inVolts(fileV)}. Nothing was changed.`;
}

function calibratedMessage(factor: number): string {
  const shown = inDigits(factor);
  const use = `The gain was tied to the meter: factor ${shown}. For other captures with the same probe and settings: --scale ${shown} (times any scale already set).`;
  return isNear(factor, 1, CREDIBLE_REACH)
    ? use
    : `${use} That is far from 1: check the probe's ratio, the meter's range, and that both looked at the same outlet at the same time.`;
}

function inVolts(volts: number): string {
  return `${inDigits(volts)} V`;
}

function inDigits(value: number): string {
  return String(Number(value.toPrecision(4)));
}

/** A multimeter's reading held against this wave. */
export interface MeterComparison {
  readonly readingV: number;
  /** `scale`: near a round ratio, `--scale` is proposed; `average`: it looks like a meter that is not true-RMS;
   * `calibrated`: the gain was tied to it. */
  readonly answer: 'scale' | 'average' | 'calibrated';
  /** Meter over file: the proposed scale or the calibration factor. */
  readonly factor: number;
  readonly message: string;
}
