import { outcomeWords } from '../../answer/outcomeWords.ts';
import { shortText } from '../../answer/shortText.ts';
import { cleanText } from '../../cleanText.ts';
import type { Evidence } from '../../evidence/evidence.ts';
import { fileLink } from '../fileLink.ts';
import { html, type Markup } from '../html.ts';
import { type LinkedFile, linkList } from '../linkedFile.ts';
import { outcomeMark } from '../outcomeMark.ts';
import { type GalleryEntry, galleryEntry } from './galleryEntry.ts';
import { thumbnail } from './thumbnail.ts';

/** A sheet of the folder, read back. */
export interface ListedSheet {
  /** Of its file. */
  readonly name: string;
  readonly evidence: Evidence;
  /** What belongs to it: page, table for an article, picture, card. */
  readonly beside: readonly LinkedFile[];
}

/** A longer title is cut: the sheet has it whole. */
const longestTitle = 90;

/** One sheet of a gallery: a small picture, what it says, its main figures, and where it all lies. */
export function galleryItem({ name, evidence, beside }: ListedSheet): Markup {
  const entry = galleryEntry(evidence);
  const { title, subject, answer, doubts, kinds, stretch, outcome, figures, order } = entry;
  const file = shortText(cleanText(name), longestTitle);
  const links = [{ name, what: 'sheet' }, ...beside];
  const orders = Object.entries(order).map(([key, value]) =>
    value === null ? null : html` data-${key}="${value}"`,
  );
  return html`<li class="entry" data-file="${file}" data-kinds="${kinds.join('|')}" data-outcome="${
    outcome === null ? 'no claim' : outcomeWords(outcome)
  }"${orders}>
<div class="look">${thumbnail(evidence)}</div>
<div class="what">
<h3><a href="${fileLink(name)}">${shortText(title, longestTitle)}</a> <span class="load">${shortText(subject, 60)}</span></h3>
<p>${answer}</p>
${doubts.map(
  (doubt) => html`<p>Doubt: ${doubt}</p>
`,
)}<p class="soft">${[kinds.join(', '), stretch].filter((part) => part !== '').join(' ')}${claimsText(entry)}</p>
${linkList(links, file)}<p class="file">${file}</p>
</div>
${
  figures.length > 0 &&
  html`<dl class="figures">${figures.map(([term, value]) => html`<div><dt>${term}</dt><dd>${value}</dd></div>`)}</dl>`
}
</li>
`;
}

/** How the claims stand, after the kind of wave. */
function claimsText({ outcome, claimCount, kinds }: GalleryEntry): Markup {
  const dot = kinds.length > 0 && ' · ';
  if (outcome === null) return html`${dot}no claim`;
  // The worst decides: where it holds, all do.
  const several = outcome === 'pass' ? `each of ${claimCount} claims` : `the worst of ${claimCount} claims`;
  const subject = claimCount === 1 ? 'the claim' : several;
  return html`${dot}${subject} ${outcomeMark(outcome)}`;
}
