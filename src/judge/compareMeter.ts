import type { MeterAnswer } from '../measure/meterAnswer.ts';
import type { Waveform } from './waveform/waveform.ts';

/** More than twice the combined doubt: no good instruments, set as they should be, disagree so far. */
const CREDIBLE_REACH = 0.15;

/** A multimeter's reading held against this wave. */
export interface MeterComparison extends Pick<MeterAnswer, 'readingV' | 'answer' | 'factor'> {
  readonly message: string;
}

/** What a meter's answer means on a wave of this kind, and what to do. */
export function compareMeter(
  { readingV, answer, factor, fileV, averageV }: MeterAnswer,
  waveform: Waveform,
): MeterComparison {
  const message = {
    scale: () => scaleMessage(readingV, fileV, factor),
    average: () => averageMessage(readingV, fileV, averageV, waveform),
    calibrated: () => calibratedMessage(factor),
  }[answer]();
  return { readingV, answer, factor, message };
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
  return Math.abs(factor - 1) <= CREDIBLE_REACH
    ? use
    : `${use} That is far from 1: check the probe's ratio, the meter's range, and that both looked at the same outlet at the same time.`;
}

function inVolts(volts: number): string {
  return `${inDigits(volts)} V`;
}

function inDigits(value: number): string {
  return String(Number(value.toPrecision(4)));
}
