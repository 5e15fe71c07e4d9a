/**
 * A plain value as JSON that is harmless wherever it is shown: what `cleanText` would replace in a text (escape
 * characters, direction marks and other invisible ones) stands as its \u escape, which reads back as it was.
 *
 * @param indent - blanks a level; 0: all on one line.
 * @example jsonText('a\u202eb') // '"a\\u202eb"'
 */
export function jsonText(value: unknown, indent = 0): string {
  return JSON.stringify(value, null, indent).replace(
    /[\p{Cf}\p{Co}\p{Zl}\p{Zp}\u007f-\u009f\ufdd0-\ufdef\ufffe\uffff]/gu,
    (character) =>
      Array.from(
        { length: character.length },
        (_, i) => `\\u${character.charCodeAt(i).toString(16).padStart(4, '0')}`,
      ).join(''),
  );
}
