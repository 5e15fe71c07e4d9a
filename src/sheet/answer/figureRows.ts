import type { CurrentFigures, VoltageFigures } from '../../verdict/measureDocument.ts';
import type { NamedFigure } from './namedFigure.ts';

/** Every figure of a channel. */
export function figureRows(figures: VoltageFigures | CurrentFigures): NamedFigure[] {
  const own = 'rmsV' in figures ? voltageRows(figures) : currentRows(figures);
  const shared: NamedFigure[] = [
    ['frequency', figures.frequencyHz, 'Hz'],
    ['crest factor', figures.crestFactor, ''],
    ['form factor', figures.formFactor, ''],
    [`THD of fundamental, to order ${figures.thdOrders}`, figures.thdPercent, '%'],
    ['THD of RMS', figures.thdOfRmsPercent, '%'],
    ['THD plus noise', figures.thdNoisePercent, '%'],
    ['bandwidth', figures.bandwidthHz, 'Hz'],
    ['deviation factor', figures.deviationFactorPercent, '%'],
    ['time at zero', figures.dwellPercent, '%'],
    ['zero crossings a cycle', figures.zeroCrossingsPerCycle, ''],
  ];
  return [...own, ...shared];
}

function voltageRows(figures: VoltageFigures): NamedFigure[] {
  return [
    ['RMS', figures.rmsV, 'V'],
    ['RMS without DC', figures.acRmsV, 'V'],
    ['an average-responding meter', figures.averageRespondingV, 'V'],
    ['mean (DC)', figures.meanV, 'V'],
    ['peak', figures.peakV, 'V'],
    ['trough', figures.troughV, 'V'],
    ['highest sample', figures.maxV, 'V'],
    ['lowest sample', figures.minV, 'V'],
    ['fundamental, RMS', figures.fundamentalV, 'V'],
    ['edge slope', figures.edgeSlopeVPerUs, 'V/µs'],
  ];
}

function currentRows(figures: CurrentFigures): NamedFigure[] {
  return [
    ['RMS', figures.rmsA, 'A'],
    ['mean (DC)', figures.meanA, 'A'],
    ['peak', figures.peakA, 'A'],
    ['trough', figures.troughA, 'A'],
    ['highest sample', figures.maxA, 'A'],
    ['lowest sample', figures.minA, 'A'],
    ['fundamental, RMS', figures.fundamentalA, 'A'],
    ['edge slope', figures.edgeSlopeAPerUs, 'A/µs'],
  ];
}
