import { MeasureError } from '../../base/measureError.ts';
import type { ByteSource, TextAccess } from './textAccess.ts';

interface DecodedText {
  /** Without the byte order mark. */
  readonly text: string;
  readonly encoding: Encoding;
}

const EXPECTED = 'rows of numbers as text, such as a CSV';

/**
 * A file's bytes as text.
 *
 * @throws MeasureError `file.empty`; `file.foreign` for a picture, document, archive or page, named;
 * `file.binary` where over 1 % of the characters are control characters once the encoding is known.
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  if (bytes.length === 0) {
    throw new MeasureError('file.empty', 'The file is empty.', {
      expected: EXPECTED,
      received: '0 bytes',
      advice: 'save the waveform again: the storage may have been pulled out too early',
    });
  }
  refuseForeign(bytes);
  const encoding = detectEncoding(bytes);
  const text = new TextDecoder(encoding === 'latin-1' ? 'latin1' : encoding).decode(bytes);
  if (text.trim() === '') {
    throw new MeasureError('file.empty', 'The file holds nothing but blanks.', {
      expected: EXPECTED,
      received: `${bytes.length} bytes of blanks`,
      advice: 'save the waveform again',
    });
  }
  refuseBinary(text);
  return { text, encoding };
}

/**
 * @param bytes - the file's first 256, or more.
 * @throws MeasureError `file.foreign`.
 */
export function refuseForeign(bytes: Uint8Array): void {
  const foreign = foreignFileKind(bytes);
  if (foreign === null) return;
  throw new MeasureError('file.foreign', `The file is ${foreign.kind}, not a capture.`, {
    expected: EXPECTED,
    received: foreign.kind,
    advice: foreign.advice,
  });
}

/** @throws MeasureError `file.binary`. */
export function refuseBinary(text: TextAccess): void {
  const share = controlShare(text);
  if (share <= 0.01) return;
  throw new MeasureError('file.binary', 'The file is binary, not text.', {
    expected: EXPECTED,
    received: `${(100 * share).toFixed(0)} % control characters`,
    advice: "save the waveform as CSV, not in the scope's own format",
  });
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

/** A file that is plainly something else than rows of numbers, and what its owner can do. */
interface ForeignFileKind {
  /** In plain words, with its article: "a PNG picture". */
  readonly kind: string;
  readonly advice: string;
}

const SAVE_AS_CSV = "a screenshot can't be measured: save the waveform as CSV";
const EXPORT_TEXT = 'export the waveform itself as CSV, plain text with one row a sample';
const UNPACK = 'unpack it, or save the sheet as CSV, and give that file';

interface Signature extends ForeignFileKind {
  /** How the file starts, as Latin-1 text. */
  readonly opening: string;
}

const SIGNATURES: readonly Signature[] = [
  { opening: '\x89PNG', kind: 'a PNG picture', advice: SAVE_AS_CSV },
  { opening: '\xff\xd8\xff', kind: 'a JPEG picture', advice: SAVE_AS_CSV },
  { opening: 'GIF87a', kind: 'a GIF picture', advice: SAVE_AS_CSV },
  { opening: 'GIF89a', kind: 'a GIF picture', advice: SAVE_AS_CSV },
  { opening: 'II*\0', kind: 'a TIFF picture', advice: SAVE_AS_CSV },
  { opening: 'MM\0*', kind: 'a TIFF picture', advice: SAVE_AS_CSV },
  { opening: '%PDF-', kind: 'a PDF document', advice: EXPORT_TEXT },
  { opening: 'PK\x03\x04', kind: 'a ZIP archive or a spreadsheet workbook', advice: UNPACK },
  { opening: 'PK\x05\x06', kind: 'an empty ZIP archive', advice: UNPACK },
  { opening: '\x1f\x8b', kind: 'a compressed (gzip) file', advice: UNPACK },
  { opening: '\xd0\xcf\x11\xe0', kind: 'an office document', advice: UNPACK },
];
const BITMAP: ForeignFileKind = { kind: 'a BMP picture', advice: SAVE_AS_CSV };
const PAGE: ForeignFileKind = {
  kind: 'a web page (HTML)',
  advice: 'download the file itself, not the page that shows it',
};
const XML: ForeignFileKind = { kind: 'an XML document', advice: EXPORT_TEXT };

/**
 * Recognises by content what can't be a capture: pictures, documents, archives, pages.
 *
 * @param bytes - the file from its first byte; only the first 256 are looked at.
 * @returns null where nothing foreign is recognised, which doesn't yet make it a capture.
 */
function foreignFileKind(bytes: Uint8Array): ForeignFileKind | null {
  let opening = '';
  for (const byte of bytes.subarray(0, 256)) opening += String.fromCharCode(byte);
  const signature = SIGNATURES.find((candidate) => opening.startsWith(candidate.opening));
  if (signature !== undefined) return { kind: signature.kind, advice: signature.advice };
  // Bytes 6 to 9 of a bitmap are reserved and zero: a text that happens to start with "BM" has none.
  if (opening.startsWith('BM') && opening.slice(6, 10) === '\0\0\0\0') return BITMAP;
  // A page may start with a byte order mark, and has zero bytes between its letters in UTF-16.
  const words = opening.replaceAll('\0', '').replace(/^(\xef\xbb\xbf|\xff\xfe|\xfe\xff)/, '');
  if (/^\s*(<!doctype html|<html)/i.test(words)) return PAGE;
  return /^\s*(<\?xml|<svg)/i.test(words) ? XML : null;
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
