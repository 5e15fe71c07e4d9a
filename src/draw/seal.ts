import { jsonText } from '../words/text.ts';
import type { Evidence } from './evidence.ts';
import { escapedBetweenTags } from './paper/writeText.ts';

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

/** Evidence with the digests that tie it to its sheet. */
export type SealedEvidence = Evidence & Seal;

interface Seal {
  /** Of `jsonText(result)`. */
  readonly resultSha256: string;
  /** Of `jsonText` of the whole evidence, without this seal. */
  readonly evidenceSha256: string;
  /** Of the sheet's text without the element that carries the evidence. */
  readonly pictureSha256: string;
}

/** The digests of evidence and its picture. */
export function sealOf(evidence: Evidence, picture: string, sha256: Digest): Seal {
  return {
    resultSha256: sha256(jsonText(evidence.result)),
    evidenceSha256: sha256(jsonText(evidence)),
    pictureSha256: sha256(picture),
  };
}

/** One face of the sheets' typeface: some of its letters in one weight. */
export interface Face {
  readonly weight: 400 | 600;
  /** Code points that it holds, first and last of each run. */
  readonly covers: readonly (readonly [from: number, to: number])[];
  /** A style rule (`@font-face`) with the font inside it as data. */
  readonly rule: string;
}

const textElement = /<text\b([^>]*)>([^<]*)</g;

/**
 * The faces that a picture's texts need, as the style element of an SVG file: so that a reader sees them in the
 * typeface that they were set in, whatever fonts the machine has.
 *
 * @param svg - the picture, as `svgText` writes it.
 * @returns empty where no face is needed.
 */
export function typefaceStyle(svg: string, faces: readonly Face[]): string {
  const used = new Map<number, Set<number>>();
  for (const [, attributes = '', text = ''] of svg.matchAll(textElement)) {
    const weight = attributes.includes('font-weight="600"') ? 600 : 400;
    const points = used.get(weight) ?? new Set();
    for (const character of text) points.add(character.codePointAt(0) ?? 0);
    used.set(weight, points);
  }
  const rules = faces
    .filter(({ weight, covers }) =>
      [...(used.get(weight) ?? [])].some((point) =>
        covers.some(([from, to]) => from <= point && point <= to),
      ),
    )
    .map(({ rule }) => `${rule}\n`);
  return rules.length === 0 ? '' : `<style>\n${rules.join('')}</style>\n`;
}

/** SHA-256 of a text's UTF-8 bytes, lower-case hexadecimal: Node and browsers each have their own. */
export type Digest = (text: string) => string;

/** What it takes to make a sheet, handed in, since Node and browsers each have their own. */
export interface Press {
  /** A browser's, or jsdom's; only `createElementNS` and what d3 needs of it. */
  readonly document: Document;
  readonly sha256: Digest;
  /** Put into each sheet as far as its texts need it; empty: what the reader has must do. */
  readonly typeface: readonly Face[];
}
