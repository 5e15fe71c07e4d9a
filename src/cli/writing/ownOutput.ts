import { isSealed, readEvidence } from '../../entry/evidence.ts';
import { MeasureError } from '../../entry/grammar.ts';
import { digest } from '../digest.ts';
import { isPng, isSealedPng } from '../report/sealedPng.ts';
import { isSealedText, withoutSeal } from './seal.ts';

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
