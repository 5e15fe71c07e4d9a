import { type Command, InvalidArgumentError, Option } from 'commander';
import { addMeasureOptions, claimWords, type MeasureFlags, type Share } from './measureOptions.ts';

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
    .addOption(
      new Option('--json-lines', 'print one result a line as JSON, each as soon as it is ready').conflicts([
        ...['json', 'all', 'budget', 'perWindow'],
      ]),
    )
    .option('--share <k/n>', 'measure every n-th capture from the k-th on: 3/8', shareOf)
    .addHelpText('after', after)
    .action(async (captures: string[], flags: MeasureFlags) => {
      const { measureCaptures } = await import('./measureCaptures.ts');
      await measureCaptures(captures, flags, command);
    });
}

/** A part of a run, for a machine of several: `3/8`. */
function shareOf(text: string): Share {
  const [, first, of] = /^(\d{1,9})\/(\d{1,9})$/.exec(text.trim()) ?? [];
  const share = { first: Number(first), of: Number(of) };
  if (!(share.first >= 1 && share.first <= share.of))
    throw new InvalidArgumentError('Two whole numbers are expected, the first from 1 to the second: 3/8.');
  return share;
}
