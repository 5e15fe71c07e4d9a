import { jsonText } from '../jsonText.ts';
import { escapedBetweenTags } from '../paper/escaped.ts';
import type { SealedEvidence } from './sealOf.ts';

/** What stands around the data of a sheet. */
export const dataStart = '<metadata id="evidence">';
export const dataEnd = '</metadata>\n';
/** The last that a sheet says before it draws. */
export const descriptionEnd = '</desc>\n';

/**
 * A picture with the data that it was drawn from inside it: the one way in which they are ever written, so that a
 * file can be held against it sign by sign.
 */
export function withData(picture: string, sealed: SealedEvidence): string {
  const at = picture.indexOf(descriptionEnd) + descriptionEnd.length;
  const data = escapedBetweenTags(jsonText(sealed));
  return `${picture.slice(0, at)}${dataStart}${data}${dataEnd}${picture.slice(at)}`;
}

/** The picture of a sheet that `withData` wrote. */
export function withoutData(sheet: string): string {
  const from = sheet.indexOf(dataStart);
  return sheet.slice(0, from) + sheet.slice(sheet.indexOf(dataEnd, from) + dataEnd.length);
}
