import type { Notice } from '../../base/notice.ts';
import { shown } from './shown.ts';

const textElement = /<(?:text|title|desc)\b[^>]*>([^<]*)</g;

/**
 * Texts of one picture that stand otherwise in another.
 *
 * @param picture - as found.
 * @param drawn - as it should be.
 * @returns empty where all texts are the same, whatever else differs.
 */
export function textFaults(picture: string, drawn: string): readonly Notice[] {
  const found = textsOf(picture);
  const right = textsOf(drawn);
  if (found.length !== right.length) {
    const extra = found.filter((text) => !right.includes(text));
    const missing = right.filter((text) => !found.includes(text));
    return [
      ...extra.map((text) => fault(`It shows ${shown(text)}, which its data don’t give.`)),
      ...missing.map((text) => fault(`It doesn’t show ${shown(text)}, which its data give.`)),
    ];
  }
  return found.flatMap((text, i) =>
    text === right[i] ? [] : [fault(`It shows ${shown(text)} where its data give ${shown(right[i])}.`)],
  );
}

function fault(message: string): Notice {
  return { code: 'picture.text', message };
}

function textsOf(svg: string): string[] {
  return [...svg.matchAll(textElement)].map(([, text]) => text ?? '');
}
