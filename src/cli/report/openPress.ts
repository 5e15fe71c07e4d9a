import type { Press } from '../../entry/evidence.ts';
import type { PagePress } from '../../entry/pages.ts';
import { digest } from '../reading/readText.ts';
import { typeface } from './typeface.ts';

/** What it takes to make a sheet. jsdom takes half a second to load: only when something is drawn. */
export async function openPress(): Promise<Press> {
  const { JSDOM } = await import('jsdom');
  return { document: new JSDOM().window.document, sha256: digest, typeface: await typeface() };
}

/** What it takes to make a page. */
export async function openPagePress(): Promise<PagePress> {
  return { sha256: digest, typeface: await typeface() };
}
