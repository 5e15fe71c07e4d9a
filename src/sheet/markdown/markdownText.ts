import { cleanText } from '../cleanText.ts';

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
