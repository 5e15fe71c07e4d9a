const SVG = 'http://www.w3.org/2000/svg';

/** An SVG element with attributes; text, where given, is text and nothing else. */
export function svgElement<Name extends keyof SVGElementTagNameMap>(
  document: Document,
  name: Name,
  attributes: Readonly<Record<string, string | number>>,
  text?: string,
): SVGElementTagNameMap[Name] {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  if (text !== undefined) element.textContent = text;
  return element;
}
