import type { OpenedSheet } from '../evidence/readEvidence.ts';
import { html, Markup } from './html.ts';

/** The picture of a sheet as part of a page, which has the typeface already: without evidence and style. */
export function inlinePicture({ picture }: Pick<OpenedSheet, 'picture'>): Markup {
  const svg = picture.replace(/<style\b[^>]*>[^<]*<\/style>\n?/g, '');
  return html`<figure class="picture">
${new Markup(svg)}</figure>
`;
}
