import { blanksText } from './blanksText.ts';
import { commaText } from './commaText.ts';
import { encodedUtf8 } from './encodedUtf8.ts';
import { encodedUtf16 } from './encodedUtf16.ts';
import { incrementText } from './incrementText.ts';
import { indexText } from './indexText.ts';
import { preambleText } from './preambleText.ts';
import { semicolonText } from './semicolonText.ts';
import { tabText } from './tabText.ts';
import { valuesText } from './valuesText.ts';
import type { WrittenCapture } from './writtenCapture.ts';

export interface CaptureLayout {
  /** One line in words. */
  readonly words: string;
  /** The lines of the file, without their ends. */
  readonly lines: (capture: WrittenCapture) => string[];
  readonly lineEnd: '\n' | '\r\n';
  readonly encoded: (text: string) => Uint8Array;
}

export type LayoutName =
  | 'comma'
  | 'semicolon'
  | 'tab'
  | 'blanks'
  | 'index'
  | 'increment'
  | 'preamble'
  | 'utf16'
  | 'values';

/** The layouts that captures can be written in: of our own, between them most structures that real files have. */
export const captureLayouts: Readonly<Record<LayoutName, CaptureLayout>> = {
  comma: {
    words: 'comma, units in brackets, time in s',
    lines: commaText,
    lineEnd: '\n',
    encoded: encodedUtf8,
  },
  semicolon: {
    words: 'semicolon, decimal comma, units in a row of their own, time in ms',
    lines: semicolonText,
    lineEnd: '\r\n',
    encoded: encodedUtf8,
  },
  tab: { words: 'tab, units after a slash, time in s', lines: tabText, lineEnd: '\n', encoded: encodedUtf8 },
  blanks: {
    words: 'runs of blanks, no header, time in s',
    lines: blanksText,
    lineEnd: '\n',
    encoded: encodedUtf8,
  },
  index: {
    words: 'comma, sample numbers, interval in the preamble',
    lines: indexText,
    lineEnd: '\r\n',
    encoded: encodedUtf8,
  },
  increment: {
    words: 'comma, sample numbers, start and increment on the header rows',
    lines: incrementText,
    lineEnd: '\r\n',
    encoded: encodedUtf8,
  },
  preamble: {
    words: 'comma, key and value lines before the header, time in s',
    lines: preambleText,
    lineEnd: '\n',
    encoded: encodedUtf8,
  },
  utf16: {
    words: 'tab, units after a slash, time in s, as UTF-16 with a mark',
    lines: tabText,
    lineEnd: '\r\n',
    encoded: encodedUtf16,
  },
  values: { words: 'nothing but values', lines: valuesText, lineEnd: '\n', encoded: encodedUtf8 },
};
