import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutText, fitText, textWidth, wrapText } from '../../../src/draw/paper/writeText.ts';

const sentence = fc
  .array(fc.string({ minLength: 1, maxLength: 30, unit: 'grapheme' }), { minLength: 1, maxLength: 20 })
  .map((words) => words.join(' ').replace(/ +/g, ' ').trim());

describe('textWidth', () => {
  it('is the sum of advance widths times the size', () => {
    // "V" 515, "±" 497, no-break space 200 thousandths of the size, read off the font's hmtx table.
    expect(textWidth('±\u00a0V', 20)).toBe(((497 + 200 + 515) / 1000) * 20);
  });

  it('counts a character that the font lacks as wider than a Han character', () => {
    expect(textWidth('漢', 10)).toBe(12);
    expect(textWidth('\u{1f50c}', 10)).toBe(12);
  });
});

describe('cutText', () => {
  it('returns what fits as it is and cuts the rest with an ellipsis', () => {
    expect(cutText('kettle', 100, 16)).toBe('kettle');
    expect(cutText('a long kettle', textWidth('a long…', 16), 16)).toBe('a long…');
    expect(cutText('kettle', 1, 16)).toBe('');
  });

  it('never exceeds the width', () => {
    fc.assert(
      fc.property(sentence, fc.integer({ min: 0, max: 400 }), (text, width) => {
        expect(textWidth(cutText(text, width, 16), 16)).toBeLessThanOrEqual(width);
      }),
    );
  });
});

describe('wrapText', () => {
  it('breaks at blanks, never at a no-break space', () => {
    const width = textWidth('distortion 2.1', 16);
    expect(wrapText('distortion 2.1\u00a0% here', width, 9, 16)).toEqual(['distortion', '2.1\u00a0% here']);
  });

  it('breaks a word that is wider than a line', () => {
    expect(wrapText('xxxxxx', textWidth('xx', 16), 9, 16)).toEqual(['xx', 'xx', 'xx']);
  });

  it('keeps every line inside the width and loses nothing while lines are left', () => {
    fc.assert(
      fc.property(sentence, fc.integer({ min: 20, max: 500 }), (text, width) => {
        const lines = wrapText(text, width, 10_000, 16);
        // A single sign wider than the line stays whole.
        for (const line of lines) {
          if ([...line].length > 1) expect(textWidth(line, 16)).toBeLessThanOrEqual(width);
        }
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
      }),
    );
  });

  it('never gives more lines than allowed', () => {
    fc.assert(
      fc.property(sentence, fc.integer({ min: 1, max: 5 }), (text, most) => {
        expect(wrapText(text, 60, most, 16).length).toBeLessThanOrEqual(most);
      }),
    );
  });
});

describe('fitText', () => {
  it('takes the largest size whose lines are few enough, else cuts at the smallest', () => {
    const width = textWidth('seven words', 30);
    expect(fitText('seven words', width, [40, 30, 20], 1)).toEqual({ lines: ['seven words'], sizePx: 30 });
    const cut = fitText('seven words and more and more', width, [40, 30], 1);
    expect(cut.sizePx).toBe(30);
    expect(cut.lines).toHaveLength(1);
    expect(cut.lines[0]).toMatch(/…$/);
  });
});
