import type { Command } from 'commander';
import type { PageFlags } from './page/writePage.ts';

const after = `
Example:
  sineassay page --open
  writes sineassay.html and opens it in your browser

The page is one file for people who would rather not open a terminal: captures
are dropped on it and measured there, with the same figures as here. It works
from a disk, offline, and sends nothing anywhere. Hand it on as it is.`;

/** Makes a command `page`: the offline page, as a file. */
export function definePage(command: Command): void {
  command
    .option('--out <file>', 'what the page is called', 'sineassay.html')
    .option('--open', 'open it in the browser')
    .option('--force', 'replace a file of that name that is no such page')
    .addHelpText('after', after)
    .action(async (flags: PageFlags) => {
      const { writePage } = await import('./page/writePage.ts');
      await writePage(flags);
    });
}
