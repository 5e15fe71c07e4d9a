import type { Press } from '../../entry/evidence.ts';
import { digest } from '../digest.ts';
import { typeface } from './typeface.ts';

/** What it takes to make a sheet. jsdom takes half a second to load: only when something is drawn. */
export async function openPress(): Promise<Press> {
  const { JSDOM } = await import('jsdom');
  return { document: new JSDOM().window.document, sha256: digest, typeface: await typeface() };
}
