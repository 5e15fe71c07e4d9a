import type { Selection } from 'd3';
import { advanceWidths, type TextWeight } from './advanceWidths.ts';
import { palette } from './palette.ts';

/** A group of the sheet to draw into. */
export type Panel = Selection<SVGGElement, unknown, null, undefined>;

interface TextStyle {
  readonly sizePx: number;
  readonly weight?: TextWeight;
  readonly ink?: string;
  readonly anchor?: 'start' | 'middle' | 'end';
}

/**
 * Writes one line of text at a baseline.
 *
 * @remarks `textLength` holds the line to its measured width, so that a reader without the typeface sees a
 * slightly squeezed substitute and never a line that runs into its neighbour.
 */
export function writeText(panel: Panel, text: string, x: number, y: number, style: TextStyle): void {
  if (text === '') return;
  const { sizePx, weight = 400, ink = palette.ink, anchor = 'start' } = style;
  const element = panel
    .append('text')
    .attr('x', rounded(x))
    .attr('y', rounded(y))
    .attr('font-size', sizePx)
    .attr('fill', ink)
    .attr('textLength', rounded(textWidth(text, sizePx, weight)))
    .attr('lengthAdjust', 'spacingAndGlyphs');
  if (weight !== 400) element.attr('font-weight', weight);
  if (anchor !== 'start') element.attr('text-anchor', anchor);
  element.text(text);
}

function rounded(px: number): number {
  return Math.round(px * 100) / 100;
}

/**
 * Writes lines one under the other.
 *
 * @param y - baseline of the first line.
 * @returns the baseline that the next line would have.
 */
export function writeLines(
  panel: Panel,
  lines: readonly string[],
  x: number,
  y: number,
  leading: number,
  style: TextStyle,
): number {
  lines.forEach((line, i) => {
    writeText(panel, line, x, y + i * leading, style);
  });
  return y + lines.length * leading;
}

/** A panel's heading, with an aside in small soft type after it; both on the baseline y. */
export function writeHeading(
  panel: Panel,
  heading: string,
  aside: string,
  x: number,
  y: number,
  widthPx: number,
): void {
  writeText(panel, heading, x, y, { sizePx: 17, weight: 600 });
  const asideX = x + textWidth(heading, 17, 600) + 12;
  writeText(panel, cutText(aside, x + widthPx - asideX, 14), asideX, y, { sizePx: 14, ink: palette.soft });
}

/**
 * Breaks a text into lines at its blanks (never at a no-break space); a word wider than a line is broken
 * anywhere. What does not fit the last line allowed is cut with an ellipsis.
 *
 * @param widthPx - of a line.
 * @param maxLines - 1 and up.
 */
export function wrapText(
  text: string,
  widthPx: number,
  maxLines: number,
  sizePx: number,
  weight: TextWeight = 400,
): string[] {
  const fits = (line: string): boolean => textWidth(line, sizePx, weight) <= widthPx;
  const lines: string[] = [];
  let rest = text;
  while (rest !== '') {
    if (fits(rest)) return [...lines, rest];
    if (lines.length === maxLines - 1) return [...lines, cutText(rest, widthPx, sizePx, weight)];
    const end = lineEnd(rest, fits);
    lines.push(rest.slice(0, end));
    rest = rest.slice(end).replace(/^ +/, '');
  }
  return lines;
}

/** Where the first line ends: after the last word that fits, else inside the first word. */
function lineEnd(text: string, fits: (line: string) => boolean): number {
  let end = 0;
  for (const { index } of text.matchAll(/ +|$/g)) {
    if (!fits(text.slice(0, index))) break;
    end = index;
  }
  if (end > 0) return end;
  for (const character of text) {
    if (end > 0 && !fits(text.slice(0, end + character.length))) break;
    end += character.length;
  }
  return end;
}

/** A text as it is, or cut short with an ellipsis so that it fits a width in px; empty where not even that fits. */
export function cutText(text: string, widthPx: number, sizePx: number, weight: TextWeight = 400): string {
  const fits = (line: string): boolean => textWidth(line, sizePx, weight) <= widthPx;
  if (fits(text)) return text;
  const characters = [...text];
  const cutAfter = (count: number): string => `${characters.slice(0, count).join('').trimEnd()}…`;
  // By halves: a name may have thousands of characters.
  let most = 0;
  for (let beyond = characters.length; beyond - most > 1; ) {
    const middle = Math.floor((most + beyond) / 2);
    if (fits(cutAfter(middle))) most = middle;
    else beyond = middle;
  }
  return fits(cutAfter(most)) ? cutAfter(most) : '';
}

/**
 * The largest size at which a text fits the lines allowed; at the smallest size it is cut.
 *
 * @param sizesPx - to try, largest first; at least one.
 */
export function fitText(
  text: string,
  widthPx: number,
  sizesPx: readonly [number, ...number[]],
  maxLines: number,
  weight: TextWeight = 400,
): { readonly lines: readonly string[]; readonly sizePx: number } {
  for (const sizePx of sizesPx) {
    const lines = wrapText(text, widthPx, maxLines + 1, sizePx, weight);
    if (lines.length <= maxLines) return { lines, sizePx };
  }
  const sizePx = sizesPx.at(-1) ?? sizesPx[0];
  return { lines: wrapText(text, widthPx, maxLines, sizePx, weight), sizePx };
}

/** Assumed for a character outside the table, in thousandths of the size: wider than a Han character. */
const unknownWidth = 1200;

/**
 * Width of a line of text in the sheet's typeface: the sum of advance widths, without kerning.
 *
 * @param sizePx - font size in px of the sheet's own coordinates.
 * @returns px; characters the table doesn't hold count as wide.
 */
export function textWidth(text: string, sizePx: number, weight: TextWeight = 400): number {
  let thousandths = 0;
  for (const character of text) thousandths += advance(character.codePointAt(0) ?? 0, weight);
  return (thousandths / 1000) * sizePx;
}

function advance(codePoint: number, weight: TextWeight): number {
  for (const { from, widths } of advanceWidths[weight]) {
    if (codePoint < from) break;
    const width = widths[codePoint - from];
    if (width !== undefined && width > 0) return width;
  }
  return unknownWidth;
}

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text made harmless between the tags and within the quoted attributes of XML and HTML. */
export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (character) => escapes[character] ?? character);
}

/** Text made harmless between the tags only, where quotes mean nothing. */
export function escapedBetweenTags(text: string): string {
  return text.replace(/[&<>]/g, (character) => escapes[character] ?? character);
}

/**
 * An SVG element as the text of a file of its own: well-formed XML, one element a line.
 *
 * @remarks Our own, because an HTML document serialises its SVG as HTML (`&nbsp;` is no XML entity), and
 * because the text must be the same whichever document drew it.
 */
export function svgText(svg: SVGSVGElement): string {
  return elementText(svg, ' xmlns="http://www.w3.org/2000/svg"');
}

function elementText(element: Element, namespace = ''): string {
  const attributes = [...element.attributes]
    .map(({ name, value }) => ` ${name}="${escaped(value)}"`)
    .join('');
  const open = `<${element.localName}${namespace}${attributes}`;
  if (element.children.length > 0) {
    const children = [...element.children].map((child) => elementText(child)).join('');
    return `${open}>\n${children}</${element.localName}>\n`;
  }
  const text = element.textContent ?? '';
  return text === '' ? `${open}/>\n` : `${open}>${escaped(text)}</${element.localName}>\n`;
}
