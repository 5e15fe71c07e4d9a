import type { Notice } from '../../base/notice.ts';
import { tagEnd } from '../evidence/tagEnd.ts';
import { shown } from './shown.ts';

/** What nobody would read through. */
const mostFaults = 50;

/**
 * Texts of one picture that stand otherwise in another.
 *
 * @param picture - as found, by whomsoever; the time grows with its length alone.
 * @param drawn - as it should be.
 * @returns empty where all texts are the same, whatever else differs; the first fifty of more.
 */
export function textFaults(picture: string, drawn: string): readonly Notice[] {
  const found = textsOf(picture);
  const right = textsOf(drawn);
  if (found.length !== right.length) {
    const [isFound, isRight] = [new Set(found), new Set(right)];
    const extra = found.filter((text) => !isRight.has(text)).slice(0, mostFaults);
    const missing = right.filter((text) => !isFound.has(text)).slice(0, mostFaults);
    return [
      ...extra.map((text) => fault(`It shows ${shown(text)}, which its data don’t give.`)),
      ...missing.map((text) => fault(`It doesn’t show ${shown(text)}, which its data give.`)),
    ];
  }
  const others = found.flatMap((text, i) => (text === right[i] ? [] : [i])).slice(0, mostFaults);
  return others.map((i) => fault(`It shows ${shown(found[i])} where its data give ${shown(right[i])}.`));
}

function fault(message: string): Notice {
  return { code: 'picture.text', message };
}

/** What stands between tags after each element that shows text. */
function textsOf(svg: string): string[] {
  const texts: string[] = [];
  for (let from = svg.indexOf('<'); from >= 0; ) {
    const end = tagEnd(svg, from);
    if (end < 0) break;
    const next = svg.indexOf('<', end);
    if (isTextTag(svg, from)) texts.push(svg.slice(end, next < 0 ? svg.length : next));
    from = next;
  }
  return texts;
}

function isTextTag(svg: string, from: number): boolean {
  const name = /^<([\w:.-]{1,20})/.exec(svg.slice(from, from + 24))?.[1];
  return name === 'text' || name === 'tspan' || name === 'title' || name === 'desc';
}
