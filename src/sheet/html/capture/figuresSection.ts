import type { MeasureResult } from '../../../verdict/measureDocument.ts';
import { figureRows } from '../../answer/figureRows.ts';
import { inputRows, powerRows } from '../../answer/powerRows.ts';
import { storyWords } from '../../answer/storyWords.ts';
import { figureTable } from '../figureTable.ts';
import { html, type Markup } from '../html.ts';

/** Every figure of a capture, a table a quantity. */
export function figuresSection(result: MeasureResult): Markup {
  const { voltage, current, power, input } = result;
  const stretch = storyWords(result)?.stretch;
  return html`<section><h2>Figures${stretch === undefined ? '' : ` ${stretch}`}</h2><p><small>± reads: about 95 % sure that the true value lies within</small></p>
${voltage !== undefined && figureTable(`Voltage, channel ${voltage.channel}`, figureRows(voltage))}${
  current !== undefined && figureTable(`Current, channel ${current.channel}`, figureRows(current))
}${power !== undefined && figureTable(`Power (IEEE 1459), current in ${power.channel}`, powerRows(power))}${
  input !== undefined &&
  figureTable(`DC input, ${input.voltageChannel} and ${input.currentChannel}`, inputRows(input))
}</section>
`;
}
