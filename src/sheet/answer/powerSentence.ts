import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { figureText } from '../numbers/figureText.ts';

/** What the load takes and what kind it is, in a sentence; null without a current channel. */
export function powerSentence({ power, current, loadKind, input }: MeasureResult): string | null {
  if (power === undefined) return null;
  const parts = [
    figureText(power.activeW, 'W'),
    ...(current === undefined ? [] : [figureText(current.rmsA, 'A')]),
    `power factor ${figureText(power.powerFactor, '')}`,
  ];
  const kind =
    loadKind === undefined || loadKind.kind === 'not classified'
      ? ''
      : `, ${loadKind.kind === 'inductive' ? 'an' : 'a'} ${loadKind.kind} load`;
  const efficiency = input?.conversionEfficiencyPercent;
  const converted =
    efficiency === undefined
      ? ''
      : ` It takes in ${figureText(input!.activeW, 'W')} of DC: ${figureText(efficiency, '%')} conversion efficiency.`;
  return `Load as measured: ${parts.join(', ')}${kind}.${converted}`;
}
