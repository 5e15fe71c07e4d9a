/** A file that is plainly something else than rows of numbers, and what its owner can do. */
export interface ForeignFileKind {
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
export function foreignFileKind(bytes: Uint8Array): ForeignFileKind | null {
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
