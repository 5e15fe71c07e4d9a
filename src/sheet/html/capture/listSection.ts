import { html, type Markup } from '../html.ts';

/** A heading with sentences under it; nothing where there is none. */
export function listSection(heading: string, sentences: readonly string[]): Markup {
  if (sentences.length === 0) return html``;
  return html`<section><h2>${heading}</h2><ul class="plain">
${sentences.map((sentence) => html`<li>${sentence}</li>\n`)}</ul></section>
`;
}
