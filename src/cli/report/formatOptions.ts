import type { Command } from 'commander';

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
