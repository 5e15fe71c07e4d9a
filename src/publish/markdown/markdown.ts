import { caution, cleanText, noCertificate } from '../../words/text.ts';
import { fileLink } from '../html/html.ts';

/** What means something in Markdown or in the HTML that it may hold; the last two at the start of a line. */
const special =
  /[&<>|\\`*[\]~#@$^{}]|(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])|:(?=\S)|(?<=www)\.|^[-+=]|(?<=^\d+)[.)](?=\s|$)/giu;

/**
 * Text made harmless in a line or a table cell of Markdown: it reads as it is and never becomes markup, a link, a
 * picture, a cell of its own or HTML.
 *
 * @remarks Written as character references, since every flavour of Markdown takes them as plain text, while few
 * agree on what a backslash escapes. Not for code spans, where references stand as they are.
 * @example markdownText('a|b <i>') // 'a&#124;b &#60;i&#62;'
 */
export function markdownText(text: string): string {
  return cleanText(text).replace(special, (character) => `&#${character.charCodeAt(0)};`);
}

/**
 * A table of Markdown.
 *
 * @param rows - texts, cleaned and escaped here.
 */
export function markdownTable(
  heads: readonly { readonly heading: string; readonly isNumber?: boolean }[],
  rows: readonly (readonly string[])[],
): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(heads.map(({ heading }) => markdownText(heading))),
    line(heads.map(({ isNumber = false }) => (isNumber ? '---:' : '---'))),
    ...rows.map((cells) => line(cells.map(markdownText))),
  ].join('\n');
}

/** A picture of the same folder, linked to itself in full size. @param says - for whoever can't see it. */
export function markdownPicture(name: string, says: string): string {
  // Parentheses end an address in Markdown, and encodeURIComponent leaves them.
  const address = fileLink(name).replaceAll('(', '%28').replaceAll(')', '%29');
  return `[![${markdownText(says)}](${address})](${address})`;
}

/** What stands at the foot of every text to paste. */
export const markdownFoot: string = `> ${caution} **${noCertificate}**\n`;
