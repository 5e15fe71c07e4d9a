import type { Command } from 'commander';
import { limitLines, limitTables } from '../index.ts';

const after = `
Example:
  sineassay limits

Every value says where it is from: a public page; or memory, quoted without the
text at hand, so that it informs and never judges. They are reference limits: a
capture of a second is not a week of statistics.`;

/** Adds `limits`: the limit tables with source, edition and provenance. */
export function registerLimits(program: Command): void {
  program
    .command('limits')
    .description('print the reference limits with their source, edition and provenance')
    .addHelpText('after', after)
    .action(() => {
      process.stdout.write(`${limitLines(limitTables()).join('\n')}\n`);
    });
}
