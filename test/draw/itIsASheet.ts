import { JSDOM } from 'jsdom';
import { expect, it } from 'vitest';
import { isOverlap, textBoxes } from './paper/textBoxes.ts';

const shapes = new Set(['svg', 'title', 'desc', 'g', 'rect', 'path', 'text']);

/** Every line of text of a picture, in the order in which they were drawn. */
export function texts(svg: Element): string[] {
  return [...svg.querySelectorAll('text')].map((text) => text.textContent ?? '');
}

/** Lines of text that stand over each other, as a sentence each. */
export function overlaps(svg: Element): string[] {
  const boxes = textBoxes(svg);
  return boxes.flatMap((a, i) =>
    boxes.slice(i + 1).flatMap((b) => (isOverlap(a, b) ? [`“${a.text}” over “${b.text}”`] : [])),
  );
}

/** Paths of which a point lies outside a box; those of a group that is moved are left out. */
export function linesOutside(
  svg: Element,
  box: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
): string[] {
  return [...svg.querySelectorAll('path')].flatMap((path) => {
    if (path.closest('[transform]') !== null) return [];
    const d = path.getAttribute('d') ?? '';
    const points = [...d.matchAll(/[ML](-?[\d.]+)[ ,](-?[\d.]+)/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    );
    const isIn = points.every(([x, y]) => x >= box.left && x <= box.right && y >= box.top && y <= box.bottom);
    return isIn ? [] : [d.slice(0, 60)];
  });
}

/**
 * What holds of every sheet of 1600 × 900, whatever it shows.
 *
 * @param svg - as drawn.
 * @param written - writes the same sheet through a document.
 */
export function itIsASheet(svg: Element, written: (document: Document) => string): void {
  const { document, DOMParser } = new JSDOM().window;
  const source = written(document);
  const parsed = new DOMParser().parseFromString(source, 'image/svg+xml');

  it('keeps every line of text inside the page, none over another', () => {
    for (const { text, left, right, top, bottom } of textBoxes(svg)) {
      expect.soft(left, text).toBeGreaterThanOrEqual(40);
      expect.soft(right, text).toBeLessThanOrEqual(1560);
      expect.soft(top, text).toBeGreaterThanOrEqual(20);
      expect.soft(bottom, text).toBeLessThanOrEqual(890);
    }
    expect(overlaps(svg)).toEqual([]);
  });

  it('draws no line beyond the paper, none left of the text', () => {
    expect(linesOutside(svg, { left: 40, right: 1560, top: 0, bottom: 900 })).toEqual([]);
  });

  it('is well-formed, with a title, a description and real text', () => {
    expect(parsed.querySelector('parsererror')).toBeNull();
    expect(parsed.documentElement.namespaceURI).toBe('http://www.w3.org/2000/svg');
    expect(parsed.documentElement.getAttribute('viewBox')).toBe('0 0 1600 900');
    expect(parsed.querySelector('svg > title')?.textContent).not.toBe('');
    expect(parsed.querySelector('svg > desc')?.textContent).toContain('not a certificate');
    expect(texts(parsed.documentElement)).toEqual(texts(svg));
  });

  it('holds nothing but shapes and text: no script, no reference, no event handler, no style', () => {
    const elements = [...parsed.querySelectorAll('*')];
    const names = new Set(elements.map(({ localName }) => localName));
    expect([...names].filter((name) => !shapes.has(name))).toEqual([]);
    const attributes = new Set(
      elements.flatMap((element) => [...element.attributes].map(({ name }) => name)),
    );
    expect([...attributes].filter((name) => /^on|href|style|src|class/.test(name))).toEqual([]);
    expect(source).not.toMatch(/url\(|NaN|undefined|Infinity|href/);
    expect(source.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
  });

  it('is the same text each time, and warns of mains', () => {
    expect(written(new JSDOM().window.document)).toBe(source);
    const all = texts(svg).join('\n');
    expect(all).toContain('A measurement, not a certificate.');
    expect(all).toContain('Mains voltage can kill.');
  });
}
