import type { PagePress } from '../../entry/pages.ts';
import { digest } from '../digest.ts';
import { typeface } from './typeface.ts';

/** What it takes to make a page. */
export async function openPagePress(): Promise<PagePress> {
  return { sha256: digest, typeface: await typeface() };
}
