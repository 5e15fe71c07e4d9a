import { textWidth } from '../../../src/draw/paper/writeText.ts';

/** A line of text on a sheet with the rectangle its glyphs may fill. */
export interface TextBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Height of an ascender and depth of a descender in Source Sans 3, as shares of the size ("d" 0.712, "g" 0.205). */
const ascent = 0.712;
const descent = 0.205;

/** Every line of text drawn on a sheet, measured by the font's own widths. */
export function textBoxes(svg: Element): TextBox[] {
  return [...svg.querySelectorAll('text')].map((element) => {
    const number = (name: string): number => Number(element.getAttribute(name));
    const text = element.textContent ?? '';
    const size = number('font-size');
    const width = textWidth(text, size, element.getAttribute('font-weight') === '600' ? 600 : 400);
    const anchor = element.getAttribute('text-anchor') ?? 'start';
    const left =
      number('x') - { start: 0, middle: width / 2, end: width }[anchor as 'start' | 'middle' | 'end'];
    const top = number('y') - ascent * size;
    return { text, left, right: left + width, top, bottom: number('y') + descent * size };
  });
}

/** True where two rectangles share more than a line. */
export function isOverlap(a: TextBox, b: TextBox): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
