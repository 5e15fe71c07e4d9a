import { figureText } from '../numbers/figureText.ts';
import type { MainFigures } from './mainFigures.ts';

/**
 * The four main figures in two rows of two, in columns, and what the ± means where a line has room for it:
 *
 *     RMS voltage  119.8 ± 0.9 V   frequency 59.997 ± 0.003 Hz
 *     crest factor 1.413 ± 0.006   THD       2.1 ± 0.4 %  (about 95 % sure)
 *
 * @param width - characters a line.
 */
export function figureColumns(figures: MainFigures, width: number): readonly [string, string] {
  const rmsName = figures.unit === 'V' ? 'RMS voltage' : 'RMS current';
  const rms = figureText(figures.rms, figures.unit);
  const crest = figureText(figures.crestFactor, '');
  const column = Math.max(rms.length, crest.length);
  const frequency = figureText(figures.frequencyHz, 'Hz');
  const thd = figureText(figures.thdPercent, '%');
  const second = `crest factor ${crest.padEnd(column)}   THD       ${thd}`;
  const sure = '  (about 95 % sure)';
  return [
    `${rmsName.padEnd(13)}${rms.padEnd(column)}   frequency ${frequency}`,
    second.length + sure.length <= width ? second + sure : second,
  ];
}
