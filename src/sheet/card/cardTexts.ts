import type { Figure } from '../../base/figure.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { capitalised } from '../answer/capitalised.ts';
import { claimsVerdict } from '../answer/claimsVerdict.ts';
import { kindName } from '../answer/kindName.ts';
import { loadText } from '../answer/loadPhrase.ts';
import { type MainFigures, mainFigures } from '../answer/mainFigures.ts';
import { outcomeWords } from '../answer/outcomeWords.ts';
import { shortText } from '../answer/shortText.ts';

/** The one message of a card: "This is a modified sine, not a sine." */
export function cardSentence({ waveform, voltage }: MeasureResult): string {
  const name = kindName(waveform);
  const subject = voltage === undefined ? 'This current' : 'This';
  if (name === null) return `${subject === 'This' ? 'This wave' : subject} can’t be classified.`;
  return `${subject} is ${name}${waveform.atTheEdge ? ', at the edge' : ''}.`;
}

/** Which unit, under which load, and how the claims stand. */
export function cardSubject({ label, loadSeen, claims }: MeasureResult): string {
  const verdict = claimsVerdict(claims);
  const [first] = verdict?.claims ?? [];
  const judged = first === undefined ? [] : [`“${shortText(first.text, 40)}” ${outcomeWords(first.outcome)}`];
  const load = loadSeen === undefined ? [] : [capitalised(loadText(loadSeen))];
  return [...(label === undefined ? [] : [label]), ...load, ...judged].join(' · ');
}

export interface CardFigure {
  readonly name: string;
  readonly figure: Figure;
  readonly unit: string;
}

/** The two or three numbers that carry the message. */
export function cardFigures(result: MeasureResult): readonly CardFigure[] {
  const figures: MainFigures | null = mainFigures(result);
  if (figures === null) return [];
  const { value: dwellPercent } = figures.dwellPercent;
  return [
    { name: 'total harmonic distortion', figure: figures.thdPercent, unit: '%' },
    ...(result.waveform.kind === 'modified sine' && dwellPercent !== null
      ? [{ name: 'of the time at zero', figure: whole(dwellPercent), unit: '%' }]
      : []),
    {
      name: figures.unit === 'V' ? 'true RMS voltage' : 'true RMS current',
      figure: figures.rms,
      unit: figures.unit,
    },
    { name: 'frequency', figure: figures.frequencyHz, unit: 'Hz' },
  ].slice(0, 3);
}

/** The share has no uncertainty of its own: its whole percent are what edges leave sure. */
function whole(percent: number): Figure {
  return { value: Math.round(percent), uncertainty: 0 };
}
