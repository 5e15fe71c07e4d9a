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
  /** In the order shown. */
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
  const { program, sheets, unread, others } = gallery;
  const benches = sheets.filter(({ evidence }) => !isOfCapture(evidence.picture));
  const captures = sheets.filter(({ evidence }) => isOfCapture(evidence.picture));
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

function isOfCapture(picture: ListedSheet['evidence']['picture']): boolean {
  return picture === 'wave' || picture === 'changes';
}

function list(heading: string, sheets: readonly ListedSheet[]): Markup {
  if (sheets.length === 0) return html``;
  return html`<section class="sheets"><h2>${heading}</h2>
<ul class="entries">
${sheets.map(galleryItem)}</ul>
</section>
`;
}

function unreadSection(unread: readonly UnreadSheet[]): Markup {
  if (unread.length === 0) return html``;
  return html`<section><h2>Could not be read back</h2>
<ul class="plain">
${unread.map(({ name, reason }) => html`<li>${shortText(cleanText(name), 90)}: <span class="soft">${cleanText(reason)}</span></li>\n`)}</ul>
</section>
`;
}
