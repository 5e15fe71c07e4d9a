import type { Command } from 'commander';
import { findCaptures } from './findCaptures.ts';
import { addMeasureOptions, claimWords, type MeasureFlags } from './measureOptions.ts';
import { refuseMeterForMany } from './refuseMeterForMany.ts';
import { runCaptures } from './runCaptures.ts';

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

/** Adds `measure`: the answer in at most fourteen lines a capture. */
export function registerMeasure(program: Command): void {
  addMeasureOptions(
    program
      .command('measure')
      .description('say what the wave is: kind, volts, hertz, crest factor, distortion, and how sure')
      .argument('<capture...>', 'files, folders or patterns'),
  )
    .addHelpText('after', after)
    .action(async (captures: string[], flags: MeasureFlags, command: Command) => {
      const found = await findCaptures(captures);
      refuseMeterForMany(found, flags, command);
      await runCaptures(found, flags);
    });
}
