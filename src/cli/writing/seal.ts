import { digest } from '../digest.ts';

/** Stands in front of the digest by which a later run knows a text for an output of this program. */
const mark = 'sineassay-seal-';
const sealPattern = /sineassay-seal-([0-9a-f]{64})/;

/** Where a text's seal is to stand; `sealedText` fills it in. */
export const unsealed: string = `${mark}${'0'.repeat(64)}`;

/**
 * A text with its seal: the SHA-256 of itself, taken while zeros stand in its place. Pages and texts to paste get a
 * line of their own for it that no reader sees; what has columns or keys keeps a place free itself.
 *
 * @param path - its ending says which.
 */
export function sealedText(path: string, text: string): string {
  const blank = text.includes(unsealed) ? text : `${text}${invisibleLine(path)}`;
  return blank.replaceAll(unsealed, `${mark}${digest(blank)}`);
}

/** Whether a text is as it was sealed. */
export function isSealedText(text: string): boolean {
  const seal = sealPattern.exec(text);
  return seal !== null && digest(text.replaceAll(seal[0], unsealed)) === seal[1];
}

/** The text without its seal. */
export function withoutSeal(text: string): string {
  return text.replaceAll(new RegExp(sealPattern, 'g'), '');
}

function invisibleLine(path: string): string {
  if (path.endsWith('.html')) return `<!-- ${unsealed} -->\n`;
  // A definition that nothing refers to.
  if (path.endsWith('.md')) return `\n[${mark.slice(0, -1)}]: <#${unsealed}>\n`;
  // A sheet carries digests of its own.
  return '';
}
