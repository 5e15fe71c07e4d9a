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
