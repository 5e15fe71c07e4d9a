import type { Evidence } from '../../draw/evidence.ts';
import { outcomeWords } from '../../words/claimWords.ts';
import { cleanText, shortText } from '../../words/text.ts';
import { type GalleryEntry, galleryEntry } from './galleryEntry.ts';
import { fileLink, html, type LinkedFile, linkList, type Markup, outcomeMark } from './html.ts';
import { htmlPage, type PagePress } from './htmlPage.ts';
import { arrangeGallery } from './pageScripts.ts';
import { thumbnail } from './thumbnail.ts';

/** A file that looks like a sheet and could not be read back. */
interface UnreadSheet {
  readonly name: string;
  /** In words. */
  readonly reason: string;
}

export interface Gallery {
  /** Version of the program. */
  readonly program: string;
  /** In the order shown. Nothing in their evidence is believed. */
  readonly sheets: readonly ListedSheet[];
  readonly unread: readonly UnreadSheet[];
  /** What belongs to no single sheet: the table of figures, the page of a bench test. */
  readonly others: readonly LinkedFile[];
}

/**
 * Every sheet of a folder on one page: what each says, with links to it and to what belongs to it; with a script,
 * to be searched and put in order.
 *
 * @param gallery - what is from captures and file names in it is cleaned and escaped here.
 */
export function galleryPage(press: PagePress, gallery: Gallery): string {
  const { program, others } = gallery;
  const { items: sheets, unread } = itemsOf(gallery);
  const benches = sheets.filter(({ isOfCapture }) => !isOfCapture);
  const captures = sheets.filter(({ isOfCapture }) => isOfCapture);
  const count = `${sheets.length} ${sheets.length === 1 ? 'sheet' : 'sheets'}`;
  return htmlPage(press, {
    title: `${count} of measurements`,
    description: `${count} of measured captures of AC outlets, each with its figures and their uncertainty.`,
    program,
    script: arrangeGallery,
    main: html`<header>
<h1>${count} of measurements</h1>
<p class="soft">Each figure’s ± reads: about 95 % sure that the true value lies within.</p>
${linkList(others)}</header>
<main>
<form id="arrange" class="arrange" hidden>
<label>Find <input type="search" name="text" autocomplete="off" spellcheck="false"></label>
<label>Kind of wave <select name="kind"><option value="">any</option></select></label>
<label>Claims <select name="outcome"><option value="">any</option></select></label>
<label>In order of <select name="order"><option value="">file</option><option value="load">load</option><option value="rms">RMS</option><option value="frequency">frequency</option><option value="crest">crest factor</option><option value="thd">THD</option></select></label>
<label class="check"><input type="checkbox" name="down"> largest first</label>
<p id="count" role="status" class="soft"></p>
</form>
${list('Bench tests', benches)}${list('Captures', captures)}${unreadSection(unread)}</main>`,
  });
}

interface Item {
  readonly isOfCapture: boolean;
  readonly markup: Markup;
}

/** What can be listed. Sheets are anybody's data, read in outline: one that breaks off here is told with the unread. */
function itemsOf({ sheets, unread }: Gallery): {
  readonly items: readonly Item[];
  readonly unread: readonly UnreadSheet[];
} {
  const items: Item[] = [];
  const broken: UnreadSheet[] = [];
  for (const sheet of sheets) {
    const { picture } = sheet.evidence;
    try {
      items.push({
        isOfCapture: picture !== 'sweep' && picture !== 'comparison',
        markup: galleryItem(sheet),
      });
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      broken.push({ name: sheet.name, reason: `its data can’t be shown (${shortText(reason, 200)})` });
    }
  }
  return { items, unread: [...unread, ...broken] };
}

function list(heading: string, sheets: readonly Item[]): Markup {
  if (sheets.length === 0) return html``;
  return html`<section class="sheets"><h2>${heading}</h2>
<ul class="entries">
${sheets.map(({ markup }) => markup)}</ul>
</section>
`;
}

function unreadSection(unread: readonly UnreadSheet[]): Markup {
  if (unread.length === 0) return html``;
  return html`<section class="unread"><h2>Not listed</h2>
<ul class="plain">
${unread.map(({ name, reason }) => html`<li>${shortText(cleanText(name), 90)}: <span class="soft">${cleanText(reason)}</span></li>\n`)}</ul>
</section>
`;
}

/** A sheet of the folder, read back. */
interface ListedSheet {
  /** Of its file. */
  readonly name: string;
  readonly evidence: Evidence;
  /** What belongs to it: page, table for an article, picture, card. */
  readonly beside: readonly LinkedFile[];
}

/** A longer title is cut: the sheet has it whole. */
const longestTitle = 90;

/** One sheet of a gallery: a small picture, what it says, its main figures, and where it all lies. */
function galleryItem({ name, evidence, beside }: ListedSheet): Markup {
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
