import { type ForeignKind, readError } from '../readErrors.ts';
import type { ByteSource, TextAccess } from './textAccess.ts';

interface DecodedText {
  /** Without the byte order mark. */
  readonly text: string;
  readonly encoding: Encoding;
}

/**
 * A file's bytes as text.
 *
 * @throws MeasureError `file.empty`; `file.foreign` for a picture, document, archive or page, named;
 * `file.binary` where over 1 % of the characters are control characters once the encoding is known.
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  if (bytes.length === 0) throw readError('file.empty', {});
  refuseForeign(bytes);
  const encoding = detectEncoding(bytes);
  const text = new TextDecoder(encoding === 'latin-1' ? 'latin1' : encoding).decode(bytes);
  if (text.trim() === '') throw readError('file.empty.blank', { bytes: bytes.length });
  refuseBinary(text);
  return { text, encoding };
}

/**
 * @param bytes - the file's first 256, or more.
 * @throws MeasureError `file.foreign`.
 */
export function refuseForeign(bytes: Uint8Array): void {
  const kind = foreignKind(bytes);
  if (kind !== null) throw readError('file.foreign', { kind });
}

/** @throws MeasureError `file.binary`. */
export function refuseBinary(text: TextAccess): void {
  const share = controlShare(text);
  if (share > 0.01) throw readError('file.binary', { controlShare: share });
}

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'latin-1';

/**
 * The text encoding of a file: by its mark, else by the zero bytes that UTF-16 puts between ASCII
 * characters, else UTF-8 where the bytes are valid UTF-8, else Latin-1, which any bytes are.
 *
 * @param bytes - the whole file; a UTF-8 character cut at its end doesn't count against it.
 */
export function detectEncoding(bytes: Uint8Array): Encoding {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const zeros = zeroShares(bytes.subarray(0, 4096));
  if (zeros.odd > 0.4 && zeros.even < 0.05) return 'utf-16le';
  if (zeros.even > 0.4 && zeros.odd < 0.05) return 'utf-16be';
  return isUtf8(bytes) ? 'utf-8' : 'latin-1';
}

/** Shares of zero bytes among those at even and at odd places, 0 to 1. */
function zeroShares(bytes: Uint8Array): { even: number; odd: number } {
  const zeros = [0, 0];
  for (let i = 0; i < bytes.length; i++) if (bytes[i] === 0) zeros[i & 1]!++;
  const pairs = Math.max(1, bytes.length / 2);
  return { even: zeros[0]! / pairs, odd: zeros[1]! / pairs };
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    // `stream` lets a character cut by the end of the file pass.
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}

const BLOCK_LENGTH = 4096;
const MOST_BLOCKS = 64;

/**
 * The share of control characters in a text, 0 to 1; tab, line ends and form feed are none.
 *
 * @param text - looked at in blocks spread evenly over it, since a text head may stand before a binary body.
 */
function controlShare(text: TextAccess): number {
  const stride = Math.max(BLOCK_LENGTH, Math.ceil(text.length / MOST_BLOCKS));
  let controls = 0;
  let looked = 0;
  for (let from = 0; from < text.length; from += stride) {
    const block = text.slice(from, Math.min(text.length, from + BLOCK_LENGTH));
    for (let i = 0; i < block.length; i++) if (isControl(block.charCodeAt(i))) controls++;
    looked += block.length;
  }
  return looked === 0 ? 0 : controls / looked;
}

function isControl(code: number): boolean {
  if (code === 0xfffd) return true; // what a decoder leaves of broken bytes
  return code < 32 ? code < 9 || code > 13 : code >= 127 && code < 160;
}

/** How such files start, as Latin-1 text. */
const SIGNATURES: readonly (readonly [opening: string, kind: ForeignKind])[] = [
  ['\x89PNG', 'png'],
  ['\xff\xd8\xff', 'jpeg'],
  ['GIF87a', 'gif'],
  ['GIF89a', 'gif'],
  ['II*\0', 'tiff'],
  ['MM\0*', 'tiff'],
  ['%PDF-', 'pdf'],
  ['PK\x03\x04', 'zip'],
  ['PK\x05\x06', 'empty zip'],
  ['\x1f\x8b', 'gzip'],
  ['\xd0\xcf\x11\xe0', 'office document'],
];

/**
 * Recognises by content what can't be a capture: pictures, documents, archives, pages.
 *
 * @param bytes - the file from its first byte; only the first 256 are looked at.
 * @returns null where nothing foreign is recognised, which doesn't yet make it a capture.
 */
function foreignKind(bytes: Uint8Array): ForeignKind | null {
  let opening = '';
  for (const byte of bytes.subarray(0, 256)) opening += String.fromCharCode(byte);
  const signature = SIGNATURES.find(([start]) => opening.startsWith(start));
  if (signature !== undefined) return signature[1];
  // Bytes 6 to 9 of a bitmap are reserved and zero: a text that happens to start with "BM" has none.
  if (opening.startsWith('BM') && opening.slice(6, 10) === '\0\0\0\0') return 'bmp';
  // A page may start with a byte order mark, and has zero bytes between its letters in UTF-16.
  const words = opening.replaceAll('\0', '').replace(/^(\xef\xbb\xbf|\xff\xfe|\xfe\xff)/, '');
  if (/^\s*(<!doctype html|<html)/i.test(words)) return 'web page';
  return /^\s*(<\?xml|<svg)/i.test(words) ? 'xml' : null;
}

const PAGE_LENGTH = 4096;

/**
 * The text of a file that is too large to hold, fetched page by page. Offsets are those of bytes: a character
 * that takes several of them counts as many, and is whole in `slice` only.
 */
export class PagedText implements TextAccess {
  readonly length: number;
  readonly #source: ByteSource;
  readonly #origin: number;
  readonly #decoder: { decode(bytes: Uint8Array): string };
  readonly #page: Uint8Array = new Uint8Array(PAGE_LENGTH);
  #pageFrom = -PAGE_LENGTH;

  /**
   * @param origin - offset of the first byte of text, behind a byte order mark.
   * @param encoding - one in which line ends and digits are the bytes of ASCII.
   */
  constructor(source: ByteSource, origin: number, encoding: 'utf-8' | 'latin-1') {
    this.length = source.byteLength - origin;
    this.#source = source;
    this.#origin = origin;
    this.#decoder = new TextDecoder(encoding === 'latin-1' ? 'latin1' : encoding, { ignoreBOM: true });
  }

  charCodeAt(at: number): number {
    if (at >= this.length) return Number.NaN;
    if (at < this.#pageFrom || at >= this.#pageFrom + PAGE_LENGTH) {
      this.#source.read(this.#origin + at, this.#page);
      this.#pageFrom = at;
    }
    return this.#page[at - this.#pageFrom]!;
  }

  slice(from: number, to: number): string {
    if (from >= this.#pageFrom && to <= this.#pageFrom + PAGE_LENGTH)
      return this.#decoder.decode(this.#page.subarray(from - this.#pageFrom, to - this.#pageFrom));
    const bytes = new Uint8Array(to - from);
    this.#source.read(this.#origin + from, bytes);
    return this.#decoder.decode(bytes);
  }
}
