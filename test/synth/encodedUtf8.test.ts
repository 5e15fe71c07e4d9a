import fc from 'fast-check';
import { expect, test } from 'vitest';
import { encodedUtf8, encodedUtf16 } from '../../src/synth/writeCapture.ts';

test('encodedUtf8(text) gives the bytes that the platform gives, half surrogates too', () => {
  expect(encodedUtf8('a µ € 𝄞 \ud800')).toEqual(new TextEncoder().encode('a µ € 𝄞 \ud800'));
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(encodedUtf8(text)).toEqual(new TextEncoder().encode(text));
    }),
  );
});

test('encodedUtf16(text) reads back as the text', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      expect(new TextDecoder('utf-16le').decode(encodedUtf16(text))).toBe(text);
    }),
  );
});
