import type { Command } from 'commander';
import { addMeasureOptions, claimWords, type MeasureFlags } from './measureOptions.ts';

const after = `
A capture is a file, a folder (all captures under it) or a pattern such as
"evening/*.csv".

Example:
  sineassay measure evening/300w.csv --claim "pure sine" --load "300 W heater"

${claimWords}

Exit code:
  0  measured, and every claim holds
  1  a claim fails, probably fails or can't be judged
  2  wrong words, or a file that could not be measured (the others still are)
  3  a defect of ours`;

/** Makes a command `measure`: the answer in some fourteen lines a capture. */
export function defineMeasure(command: Command): void {
  addMeasureOptions(command.argument('<capture...>', 'files, folders or patterns'))
    .addHelpText('after', after)
    .action(async (captures: string[], flags: MeasureFlags) => {
      const { measureCaptures } = await import('./measureCaptures.ts');
      await measureCaptures(captures, flags, command);
    });
}
