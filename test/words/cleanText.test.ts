import { describe, expect, it } from 'vitest';
import { cleanText, cleanTexts } from '../../src/words/text.ts';

describe('cleanText', () => {
  it.each([
    ['an escape sequence', 'a\u001b[31mb', 'a\ufffd[31mb'],
    ['a line break', 'a\r\nb', 'a\ufffd\ufffdb'],
    ['a tab', 'a\tb', 'a\ufffdb'],
    ['a C1 control', 'a\u009bb', 'a\ufffdb'],
    ['direction marks', '\u202egpj.\u2066a\u200f', '\ufffdgpj.\ufffda\ufffd'],
    ['invisible characters', 'a\u200bb\ufeffc\u2060d\u00ade', 'a\ufffdb\ufffdc\ufffdd\ufffde'],
    ['line and paragraph separators', 'a\u2028b\u2029c', 'a\ufffdb\ufffdc'],
    ['a lone surrogate', 'a\ud800b', 'a\ufffdb'],
    ['what XML forbids', 'a\uffffb\ufffec', 'a\ufffdb\ufffdc'],
    ['a private-use character', 'a\ue000b', 'a\ufffdb'],
  ])('replaces %s', (_, text, clean) => {
    expect(cleanText(text)).toBe(clean);
  });

  it('keeps letters of every script, signs, emoji and no-break spaces', () => {
    for (const text of ['120\u00a0V ±5\u00a0%', 'Über 漢字 кВт', '\u{1f50c}', '<b>&"']) {
      expect(cleanText(text)).toBe(text);
    }
  });

  it('cuts a pile of combining marks to two and runs of blanks to one', () => {
    expect(cleanText('e\u0301\u0302\u0303\u0304 x   y ')).toBe('e\u0301\u0302 x y');
  });
});

describe('cleanTexts', () => {
  it('cleans every string of a nested value and leaves the rest alone', () => {
    const samples = Float64Array.of(1, Number.NaN);
    const value = { a: 'x\u0007', b: [{ c: 'y\u202e' }, 3, null, true], samples };
    const clean = cleanTexts(value);
    expect(clean).toEqual({ a: 'x\ufffd', b: [{ c: 'y\ufffd' }, 3, null, true], samples });
    expect(clean.samples).toBe(samples);
    expect(value.a).toBe('x\u0007');
  });
});
