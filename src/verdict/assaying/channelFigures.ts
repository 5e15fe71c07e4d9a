import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { CurrentFigures, VoltageFigures } from '../measureDocument.ts';
import { withoutBudgets } from './withoutBudgets.ts';

/** A voltage channel's figures under the keys of the result document. */
export function voltageFigures(channel: string, budgeted: WaveFigures): VoltageFigures {
  const figures = withoutBudgets(budgeted);
  return {
    channel,
    spanS: figures.spanS,
    cyclesUsed: figures.cyclesUsed,
    frequencyHz: figures.frequencyHz,
    rmsV: figures.rms,
    meanV: figures.mean,
    peakV: figures.peak,
    troughV: figures.trough,
    maxV: figures.max,
    minV: figures.min,
    ...ratios(figures),
    fundamentalV: figures.fundamental,
    edgeSlopeVPerUs: figures.edgeSlope,
    acRmsV: figures.acRms,
    averageRespondingV: figures.averageResponding,
    harmonics: figures.harmonics.map(({ order, rms, ...rest }) => ({ order, rmsV: rms, ...rest })),
  };
}

/** A current channel's figures under the keys of the result document. */
export function currentFigures(channel: string, budgeted: WaveFigures): CurrentFigures {
  const figures = withoutBudgets(budgeted);
  return {
    channel,
    spanS: figures.spanS,
    cyclesUsed: figures.cyclesUsed,
    frequencyHz: figures.frequencyHz,
    rmsA: figures.rms,
    meanA: figures.mean,
    peakA: figures.peak,
    troughA: figures.trough,
    maxA: figures.max,
    minA: figures.min,
    ...ratios(figures),
    fundamentalA: figures.fundamental,
    edgeSlopeAPerUs: figures.edgeSlope,
    harmonics: figures.harmonics.map(({ order, rms, ...rest }) => ({ order, rmsA: rms, ...rest })),
  };
}

function ratios(
  figures: WaveFigures,
): Pick<
  VoltageFigures,
  | 'crestFactor'
  | 'formFactor'
  | 'thdPercent'
  | 'thdOfRmsPercent'
  | 'thdOrders'
  | 'thdNoisePercent'
  | 'bandwidthHz'
  | 'deviationFactorPercent'
  | 'dwellPercent'
  | 'zeroCrossingsPerCycle'
> {
  const { crestFactor, formFactor, thdPercent, thdOfRmsPercent, thdOrders } = figures;
  const { thdNoisePercent, bandwidthHz, deviationFactorPercent, dwellPercent, zeroCrossingsPerCycle } =
    figures;
  return {
    crestFactor,
    formFactor,
    thdPercent,
    thdOfRmsPercent,
    thdOrders,
    thdNoisePercent,
    bandwidthHz,
    deviationFactorPercent,
    dwellPercent,
    zeroCrossingsPerCycle,
  };
}
