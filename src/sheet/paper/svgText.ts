import { escaped } from './escaped.ts';

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
