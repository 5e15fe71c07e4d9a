import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { mainFigures } from './mainFigures.ts';
import type { NamedFigure } from './namedFigure.ts';

/** The figures by which a capture is known, four or five; none for a result without voltage and current. */
export function headlineFigures(result: MeasureResult): NamedFigure[] {
  const figures = mainFigures(result);
  if (figures === null) return [];
  const { unit, rms, frequencyHz, crestFactor, thdPercent } = figures;
  return [
    [unit === 'V' ? 'RMS voltage' : 'RMS current', rms, unit],
    ['Frequency', frequencyHz, 'Hz'],
    ['Crest factor', crestFactor, ''],
    ['THD', thdPercent, '%'],
    ...(result.power === undefined
      ? []
      : [['Active power', result.power.activeW, 'W'] satisfies NamedFigure]),
  ];
}
