import { drawPicture } from '../evidence/drawPicture.ts';
import type { Evidence } from '../evidence/evidence.ts';
import { html, Markup } from './html.ts';

/** The picture of a sheet as part of a page, which has the typeface already: without evidence and style. */
export function inlinePicture(document: Document, evidence: Evidence): Markup {
  const svg = drawPicture(document, evidence).replace(/<style\b[^>]*>[^<]*<\/style>\n?/g, '');
  return html`<figure class="picture">
${new Markup(svg)}</figure>
`;
}
