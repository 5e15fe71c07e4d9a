import { isSealed, readEvidence } from '../../entry/evidence.ts';
import { MeasureError } from '../../entry/grammar.ts';
import { digest } from '../reading/readText.ts';
import { isPng, isSealedPng } from '../report/sealedPng.ts';

/** Tells whether a file that stands in the way is an earlier output of this program, to be written over. */
export type OwnTest = (there: Buffer) => boolean;

/** One about all of these captures. @param sha256 - of the captures' bytes. */
export function ownOutput(sha256: readonly string[]): OwnTest {
  return (there) => isOurs(there) && sha256.every((one) => there.includes(one));
}

/** One about some of these captures: a bench test grows over an evening. Or about none at all: nothing is lost. */
export function ownBenchOutput(sha256: readonly string[]): OwnTest {
  return (there) => {
    if (!isOurs(there)) return false;
    const about = digestsIn(there);
    return about.length === 0 || sha256.some((one) => about.includes(one));
  };
}

/** One about none but these captures: a table of more would lose rows. */
export function ownTable(sha256: readonly string[]): OwnTest {
  return (there) => isOurs(there) && digestsIn(there).every((one) => sha256.includes(one));
}

/** A page that this program made and nobody changed: it is made anew from what lies beside it, so that nothing is lost. */
export function ownGallery(there: Buffer): boolean {
  return isOurs(there) && there.includes('<meta name="generator" content="sineassay ');
}

const script = /<script>([\s\S]*?)<\/script>/;

/** The offline page, whatever its version: its own policy holds the digest of the script that it runs. */
export function ownPage(there: Buffer): boolean {
  if (!there.includes('<title>Sineassay: is it a sine?</title>')) return false;
  const text = there.toString('utf8');
  const run = script.exec(text)?.[1];
  const policy = /script-src '(sha256-[\w+/=]{44})'/.exec(text)?.[1];
  return run !== undefined && policy === `sha256-${Buffer.from(digest(run), 'hex').toString('base64')}`;
}

/** Every output of this program carries digests of itself: a file that merely names the program has none that fit. */
function isOurs(there: Buffer): boolean {
  if (isPng(there)) return isSealedPng(there);
  const text = there.toString('utf8');
  return text.startsWith('<svg') ? isSealedSheet(text) : isSealedText(text);
}

function isSealedSheet(text: string): boolean {
  try {
    return isSealed(readEvidence(text), digest);
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return false;
  }
}

/** Of captures that a text is about. */
function digestsIn(there: Buffer): readonly string[] {
  return withoutSeal(there.toString('latin1')).match(/\b[0-9a-f]{64}\b/g) ?? [];
}

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
function withoutSeal(text: string): string {
  return text.replaceAll(new RegExp(sealPattern, 'g'), '');
}

function invisibleLine(path: string): string {
  if (path.endsWith('.html')) return `<!-- ${unsealed} -->\n`;
  // A definition that nothing refers to.
  if (path.endsWith('.md')) return `\n[${mark.slice(0, -1)}]: <#${unsealed}>\n`;
  // A sheet carries digests of its own.
  return '';
}
