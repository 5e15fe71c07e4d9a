import type { MeterAnswer } from '../measure/meterAnswer.ts';
import type { MeterFact } from './notices.ts';
import type { Waveform } from './waveform/waveform.ts';

/** More than twice the combined doubt: no good instruments, set as they should be, disagree so far. */
const CREDIBLE_REACH = 0.15;

/** A multimeter's reading held against this wave. */
export interface MeterComparison extends Pick<MeterAnswer, 'readingV' | 'answer' | 'factor'> {
  readonly message: MeterFact;
}

/** What a meter's answer means on a wave of this kind, and what to do. */
export function compareMeter(
  { readingV, answer, factor, fileV, averageV }: MeterAnswer,
  { kind }: Waveform,
): MeterComparison {
  const facts: Readonly<Record<MeterAnswer['answer'], MeterFact>> = {
    scale: { code: 'meter.scale', readingV, fileV, ratio: factor },
    average: { code: 'meter.average', readingV, fileV, averageV, kind },
    calibrated: { code: 'meter.calibrated', factor, isCredible: Math.abs(factor - 1) <= CREDIBLE_REACH },
  };
  return { readingV, answer, factor, message: facts[answer] };
}
