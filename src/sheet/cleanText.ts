/**
 * Text from outside (a file's name, a channel's, a label) made harmless to look at: control and escape
 * characters, direction marks and other invisible format characters, lone surrogates and private-use
 * characters each become the replacement mark U+FFFD; a pile of combining marks is cut to two; runs of
 * blanks become one.
 *
 * @remarks Markup is not touched: what draws or prints the text escapes it in its own way.
 * @example cleanText('a\u001b[31mb') // "a\ufffd[31mb"
 */
export function cleanText(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}\ufdd0-\ufdef\ufffe\uffff]/gu, '\ufffd')
    .replace(/(\p{M}{2})\p{M}+/gu, '$1')
    .replace(/ {2,}/g, ' ')
    .trim();
}
