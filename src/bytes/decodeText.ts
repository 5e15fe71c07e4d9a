import { MeasureError } from '../base/measureError.ts';
import { controlShare } from './controlShare.ts';
import { detectEncoding, type Encoding } from './detectEncoding.ts';
import { foreignFileKind } from './foreignFileKind.ts';
import type { TextAccess } from './textAccess.ts';

export interface DecodedText {
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
