import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Face, Press } from '../entry/evidence.ts';

// Put in by the build.
declare const SHIPPED_VERSION: string;
declare const SHIPPED_FACES: readonly Face[];

/** Version of the program, as its package says. */
export const version: string = SHIPPED_VERSION;

/** The sheets' typeface: its Latin and Greek letters, in both weights. */
export const faces: readonly Face[] = SHIPPED_FACES;

/** What it takes to make a sheet, as a browser has it. */
export function pagePress(document: Document): Press {
  return { document, sha256: (text) => bytesToHex(sha256(utf8ToBytes(text))), typeface: faces };
}

const rule = /src:url\((data:[^)]+)\) format\('woff2'\);unicode-range:([^}]+)\}/;

/** Gives the page the sheets' typeface, from the same data. */
export async function loadTypefaces(document: Document, faces: readonly Face[]): Promise<void> {
  const loaded = faces.map(async (face) => {
    const [, data, unicodeRange] = rule.exec(face.rule) ?? [];
    if (data === undefined || unicodeRange === undefined)
      throw new Error('the page was built with another typeface');
    const font = new FontFace('Source Sans 3', `url(${data})`, { weight: String(face.weight), unicodeRange });
    document.fonts.add(await font.load());
  });
  await Promise.all(loaded);
}
