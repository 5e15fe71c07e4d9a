import { type Command, InvalidArgumentError } from 'commander';
import type { CardTheme } from '../../entry/evidence.ts';
import type { LinkedFile } from '../../entry/pages.ts';

/** The flags of what is written beside sheets, as commander hands them over. */
export interface FormatFlags {
  readonly html?: boolean;
  readonly markdown?: boolean;
  readonly csv?: boolean;
  readonly gallery?: boolean;
}

/** What a run writes beside its sheets. */
export interface Formats {
  /** A page of each capture or plan. */
  readonly html: boolean;
  /** The same as text to paste. */
  readonly markdown: boolean;
  /** One table of the run's figures. */
  readonly csv: boolean;
  /** One page of every sheet in the folder. */
  readonly gallery: boolean;
}

/** @param name - that pages have: `NAME` stands for each capture's. */
export function addFormatOptions(command: Command, name: string): Command {
  return command
    .option('--html', `also a page with every figure as a sortable table, ${name}.html`)
    .option('--markdown', `also a table to paste into an article, ${name}.md`)
    .option('--csv', 'also a table of all figures, a row a capture, figures.csv')
    .option('--no-gallery', 'leave out index.html, which shows every sheet of the folder');
}

/** Defaults filled in. */
export function formatsOf({
  html = false,
  markdown = false,
  csv = false,
  gallery = true,
}: FormatFlags): Formats {
  return { html, markdown, csv, gallery };
}

/** A capture may stand where the theme would: then it is said how to tell them apart. */
export function cardTheme(text: string): CardTheme {
  if (text === 'light' || text === 'dark') return text;
  throw new InvalidArgumentError(
    'It is light or dark. A capture or plan stands before --card, or after --card light.',
  );
}

/** What a file of the folder of results is, by its name; the first that fits. */
const kinds: readonly (readonly [end: RegExp, what: string])[] = [
  [/^index\.html$/, 'all sheets'],
  [/^bench\.html$/, 'page of the bench test'],
  [/^bench\.md$/, 'bench test as text to paste'],
  [/^bench\.json$/, 'bench test as data'],
  [/^figures\.csv$/, 'figures of the last run as a table'],
  [/^comparison\.svg$/, 'sheet of all units'],
  [/^sweep-.*\.svg$/, 'sheet of a sweep'],
  [/-card\.svg$/, 'card'],
  [/-card\.png$/, 'card as picture'],
  [/-changes\.svg$/, 'sheet of changes'],
  [/-changes\.png$/, 'picture of changes'],
  [/\.svg$/, 'sheet'],
  [/\.png$/, 'picture'],
  [/\.html$/, 'page'],
  [/\.md$/, 'text to paste'],
];

/** A file of the folder of results as a page links to it. */
export function linkedFile(name: string): LinkedFile {
  return { name, what: kinds.find(([end]) => end.test(name))?.[1] ?? name };
}
