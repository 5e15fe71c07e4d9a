import { shortText } from '../../answer/shortText.ts';
import { cleanText } from '../../cleanText.ts';
import { html, type Markup } from '../html.ts';
import { htmlPage, type PagePress } from '../htmlPage.ts';
import { type LinkedFile, linkList } from '../linkedFile.ts';
import { arrangeGallery } from '../script/arrangeGallery.ts';
import { galleryItem, type ListedSheet } from './galleryItem.ts';

/** A file that looks like a sheet and could not be read back. */
export interface UnreadSheet {
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
