import type { Figure } from '../../base/figure.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';

/** The figures that a sheet and the terminal show, for volts and amperes alike. */
export interface MainFigures {
  readonly unit: 'V' | 'A';
  readonly channel: string;
  readonly spanS: readonly [number, number];
  readonly cyclesUsed: number;
  readonly frequencyHz: Figure;
  /** In `unit`, as are the next three. */
  readonly rms: Figure;
  readonly mean: Figure;
  readonly peak: Figure;
  readonly trough: Figure;
  readonly crestFactor: Figure;
  readonly thdPercent: Figure;
  readonly thdNoisePercent: Figure;
  readonly thdOrders: number;
  readonly bandwidthHz: Figure;
  readonly dwellPercent: Figure;
  readonly harmonics: readonly { readonly order: number; readonly percent: number }[];
  /** RMS without DC, and what an average-responding meter shows; null for a current. */
  readonly meter: { readonly trueRmsV: Figure; readonly averageRespondingV: Figure } | null;
}

/** The voltage's figures, else the current's; null for a result that has neither. */
export function mainFigures(result: MeasureResult): MainFigures | null {
  const { voltage, current } = result;
  if (voltage !== undefined) {
    return {
      ...voltage,
      unit: 'V',
      rms: voltage.rmsV,
      mean: voltage.meanV,
      peak: voltage.peakV,
      trough: voltage.troughV,
      meter: { trueRmsV: voltage.acRmsV, averageRespondingV: voltage.averageRespondingV },
    };
  }
  if (current === undefined) return null;
  return {
    ...current,
    unit: 'A',
    rms: current.rmsA,
    mean: current.meanA,
    peak: current.peakA,
    trough: current.troughA,
    meter: null,
  };
}
