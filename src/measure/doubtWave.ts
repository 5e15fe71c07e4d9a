import { aperiodicFigures } from './aperiodicFigures.ts';
import { doubts } from './doubts.ts';
import type { MeasuringChain } from './envelope.ts';
import type { MeasuredWave } from './measuredWave.ts';
import type { MeasureNotice } from './notices.ts';
import { periodicFigures } from './periodicFigures.ts';
import type { WaveEstimate } from './waveEstimate.ts';

/** The third pass over a wave: each value with its uncertainty, and what to doubt about the wave as a whole. */
export function doubtWave(estimate: WaveEstimate, { instrument, scaleSource }: MeasuringChain): MeasuredWave {
  const { samples, startS, intervalS, stepSize } = estimate;
  const where = { samples, startS, intervalS, stepSize };
  if (estimate.periodic === null) {
    const figures = aperiodicFigures(estimate, instrument, scaleSource);
    return { ...where, aperiodic: estimate.aperiodic, periodic: null, figures };
  }
  const notices: MeasureNotice[] = doubts(estimate, estimate.ordersAsked);
  if (estimate.split) notices.unshift(splitNotice(estimate));
  const figures = { ...periodicFigures(estimate, instrument, scaleSource), notices };
  return { ...where, aperiodic: null, periodic: estimate.periodic, figures };
}

function splitNotice(record: { startS: number; intervalS: number; samples: Float64Array }): MeasureNotice {
  const toS = record.startS + record.samples.length * record.intervalS;
  return { code: 'span.longest', fromS: record.startS, toS };
}
