import type { Face } from '../../entry/evidence.ts';

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
