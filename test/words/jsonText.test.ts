import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jsonText } from '../../src/words/text.ts';

test('what it writes reads back as it was, and shows no invisible character', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), fc.jsonValue(), (text, value) => {
      const written = jsonText({ text, value });
      expect(JSON.parse(written)).toEqual(JSON.parse(JSON.stringify({ text, value })));
      expect(written).not.toMatch(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/u);
    }),
  );
});

test('a direction mark, an escape character and a tag beyond the first plane stand as escapes', () => {
  expect(jsonText('a\u202eb\u001b\u{e0041}')).toBe('"a\\u202eb\\u001b\\udb40\\udc41"');
});
