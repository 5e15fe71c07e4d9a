import type { Command } from 'commander';

const after = `
Example:
  sineassay limits

Every value says where it is from: a public page; or memory, quoted without the
text at hand, so that it informs and never judges. They are reference limits: a
capture of a second is not a week of statistics.`;

/** Makes a command `limits`: the limit tables with source, edition and provenance. */
export function defineLimits(command: Command): void {
  command.addHelpText('after', after).action(async () => {
    const { limitLines, limitTables } = await import('../entry/checking.ts');
    process.stdout.write(`${limitLines(limitTables()).join('\n')}\n`);
  });
}
