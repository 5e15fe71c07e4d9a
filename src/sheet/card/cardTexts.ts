import type { Figure } from '../../base/figure.ts';
import type { Notice } from '../../base/notice.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { capitalised } from '../answer/capitalised.ts';
import { claimsPhrase } from '../answer/claimsPhrase.ts';
import { claimsVerdict } from '../answer/claimsVerdict.ts';
import { kindName } from '../answer/kindName.ts';
import { loadText } from '../answer/loadPhrase.ts';
import { type MainFigures, mainFigures } from '../answer/mainFigures.ts';
import { outcomeWords } from '../answer/outcomeWords.ts';
import { isGrave, rankNotices } from '../answer/rankNotices.ts';
import { shortText } from '../answer/shortText.ts';
import { storyOf } from '../answer/story.ts';
import { changeWords, isAboutChange } from '../answer/storySentence.ts';
import { storyWords } from '../answer/storyWords.ts';
import { type CardFigure, storyFigures } from './storyFigures.ts';

/** The one message of a card: what happened, else the kind of wave: "This is a modified sine, not a sine." */
export function cardSentence(result: MeasureResult): string {
  const story = storyWords(result);
  if (story !== null) return `${changeWords(result, story, story.brief)}.`;
  const { waveform, voltage } = result;
  const name = kindName(waveform);
  const subject = voltage === undefined ? 'This current' : 'This';
  if (name === null) return `${subject === 'This' ? 'This wave' : subject} can’t be classified.`;
  return `${subject} is ${name}${waveform.atTheEdge ? ', at the edge' : ''}.`;
}

/** Which unit, under which load, and how the claims stand, as far as the message does not tell it. */
export function cardSubject(result: MeasureResult): string {
  const { label, loadSeen, claims } = result;
  const told = label === undefined ? [] : [label];
  const load = loadSeen === undefined ? '' : loadText(loadSeen);
  const story = storyWords(result);
  if (story !== null) {
    const others = claimsPhrase(claims.filter((claim) => !isAboutChange(claim)));
    const wave = kindName(result.waveform) ?? 'a wave that can’t be classified';
    const before = `${capitalised(story.measuredThen)}${load === '' ? '' : `, ${load}`}: ${others === '' ? wave : others}`;
    return [...told, before].join(' · ');
  }
  const [first] = claimsVerdict(claims)?.claims ?? [];
  const judged = first === undefined ? [] : [`“${shortText(first.text, 40)}” ${outcomeWords(first.outcome)}`];
  return [...told, ...(load === '' ? [] : [capitalised(load)]), ...judged].join(' · ');
}

/** The two or three numbers that carry the message. */
export function cardFigures(result: MeasureResult): readonly CardFigure[] {
  const figures: MainFigures | null = mainFigures(result);
  const story = storyOf(result);
  const led = story === null ? [] : storyFigures(story);
  if (figures === null) return led;
  const { value: dwellPercent } = figures.dwellPercent;
  const stretch = storyWords(result)?.stretch;
  const beside = (name: string): string => (stretch === undefined ? name : `${name} ${stretch}`);
  const quantity = figures.unit === 'V' ? 'voltage' : 'current';
  const rms = {
    name: stretch === undefined ? `true RMS ${quantity}` : `RMS ${quantity} ${stretch}`,
    figure: figures.rms,
    unit: figures.unit,
  };
  const thd = { name: beside('total harmonic distortion'), figure: figures.thdPercent, unit: '%' };
  if (led.length > 0) return [...led, rms, { ...thd, name: beside('distortion') }].slice(0, 3);
  return [
    thd,
    ...(result.waveform.kind === 'modified sine' && dwellPercent !== null
      ? [{ name: 'of the time at zero', figure: whole(dwellPercent), unit: '%' }]
      : []),
    rms,
    { name: 'frequency', figure: figures.frequencyHz, unit: 'Hz' },
  ].slice(0, 3);
}

/**
 * The doubt that may make every number of a card wrong, and how many more stand elsewhere; null where there is none so
 * grave: a card is no place for the others.
 */
export function cardDoubt(
  notices: readonly Notice[],
): { readonly message: string; readonly more: string } | null {
  const [worst] = rankNotices(notices);
  if (worst === undefined || !isGrave(worst)) return null;
  const others = notices.filter(({ code }) => code !== 'data.invented').length - 1;
  const more =
    others < 1 ? '' : `${others} more ${others === 1 ? 'doubt' : 'doubts'} in the page and the JSON`;
  return { message: worst.message, more };
}

/** The share has no uncertainty of its own: its whole percent are what edges leave sure. */
function whole(percent: number): Figure {
  return { value: Math.round(percent), uncertainty: 0 };
}
