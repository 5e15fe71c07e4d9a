import {
  blanksText,
  commaText,
  incrementText,
  indexText,
  preambleText,
  semicolonText,
  tabText,
  valuesText,
  type WrittenCapture,
} from './layoutTexts.ts';

/**
 * The bytes of a capture file.
 *
 * @remarks Values keep seven significant digits of the largest, times a thousandth of the interval.
 * @throws RangeError where the channels differ in length or the interval is not positive.
 */
export function writeCapture(layout: LayoutName, capture: WrittenCapture): Uint8Array {
  const { channels, intervalS } = capture;
  if (channels.some(({ samples }) => samples.length !== channels[0].samples.length)) {
    throw new RangeError('the channels differ in length');
  }
  if (!(intervalS > 0)) throw new RangeError(`the interval must be positive, not ${intervalS}`);
  const { lines, lineEnd, encoded } = captureLayouts[layout];
  return encoded(
    lines(capture)
      .map((line) => line + lineEnd)
      .join(''),
  );
}

interface CaptureLayout {
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

/** Text as UTF-8 without a mark. Half surrogates become the replacement mark. @see RFC 3629 */
export function encodedUtf8(text: string): Uint8Array {
  // No UTF-16 unit takes more than three bytes.
  const bytes = new Uint8Array(3 * text.length);
  let length = 0;
  const push = (byte: number): void => {
    bytes[length++] = byte;
  };
  const pushTail = (point: number, shift: number): void => push(0x80 | ((point >> shift) & 0x3f));
  for (const character of text) {
    const given = character.codePointAt(0) as number;
    const point = given >= 0xd800 && given < 0xe000 ? 0xfffd : given;
    if (point < 0x80) {
      push(point);
    } else if (point < 0x800) {
      push(0xc0 | (point >> 6));
      pushTail(point, 0);
    } else if (point < 0x10000) {
      push(0xe0 | (point >> 12));
      pushTail(point, 6);
      pushTail(point, 0);
    } else {
      push(0xf0 | (point >> 18));
      pushTail(point, 12);
      pushTail(point, 6);
      pushTail(point, 0);
    }
  }
  return bytes.slice(0, length);
}

/** Text as UTF-16, little end first, with its byte order mark. @see RFC 2781 */
export function encodedUtf16(text: string): Uint8Array {
  const units = new Uint8Array(2 * (text.length + 1));
  const view = new DataView(units.buffer);
  view.setUint16(0, 0xfeff, true);
  for (let i = 0; i < text.length; i++) view.setUint16(2 * (i + 1), text.charCodeAt(i), true);
  return units;
}
