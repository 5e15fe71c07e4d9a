import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Press } from '../../entry/evidence.ts';
import { faces } from '../shipped.ts';

/** What it takes to make a sheet, as a browser has it. */
export function pagePress(document: Document): Press {
  return { document, sha256: (text) => bytesToHex(sha256(utf8ToBytes(text))), typeface: faces };
}
