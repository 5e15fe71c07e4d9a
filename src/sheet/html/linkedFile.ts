import { cleanText } from '../cleanText.ts';
import { fileLink } from './fileLink.ts';
import { html, type Markup } from './html.ts';

/** A file of the page's own folder. */
export interface LinkedFile {
  readonly name: string;
  /** What it is: `picture`. */
  readonly what: string;
}

/** Files as a list of links, each named by what it is; nothing where there is none. */
export function linkList(files: readonly LinkedFile[], of = ''): Markup {
  if (files.length === 0) return html``;
  // The same word stands beside every sheet of a folder: whoever hears links alone needs to hear of which.
  return html`<ul class="links">${files.map(
    ({ name, what }) =>
      html`<li><a href="${fileLink(name)}">${what}${of !== '' && html`<span class="hidden"> of ${cleanText(of)}</span>`}</a></li>`,
  )}</ul>
`;
}
