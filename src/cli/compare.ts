import type { Command } from 'commander';
import type { CompareFlags } from './compare/compareFiles.ts';
import { addMeasureOptions, claimWords } from './measureOptions.ts';

const after = `
Each of the two is a sheet (.svg), a capture, or a document of measure --json
with one result; captures are measured with the options given.

Examples:
  sineassay compare before.csv after.csv --same-instrument
  sineassay compare reports/inverter-a.svg reports/inverter-b.svg --out reports
  writes reports/compare-inverter-a-inverter-b.svg too: both waves together.

A difference counts where it is larger than its uncertainty, about 95 % sure. By
default each capture has an instrument of its own; --same-instrument says that
one scope and probe at one setting took both, so that what they are off by
counts once. That takes captures: sheets don't carry it.

${claimWords}

Exit code:
  0  compared
  1  with --same: a figure or the kind of wave differs (of many figures together
     one may differ by chance: their uncertainties are widened for that)
  2  wrong words, or a file that could not be read or measured
  3  a defect of ours`;

/** Makes a command `compare`: two captures, figure by figure. */
export function defineCompare(command: Command): void {
  addMeasureOptions(
    command
      .argument('<a>', 'a sheet, a capture, or a result (.json)')
      .argument('<b>', 'what to hold against it'),
  )
    .option('--same-instrument', 'one scope and probe at one setting took both captures')
    .option('--same', 'exit with 1 where a figure or the kind of wave differs')
    .option('--out <folder>', 'also write a sheet of both waves over each other')
    .option('--png', 'with --out: also a picture of 1920 × 1080')
    .option('--force', 'replace files that are no earlier result of the same captures')
    .addHelpText('after', after)
    .action(async (a: string, b: string, flags: CompareFlags) => {
      const { compareFiles } = await import('./compare/compareFiles.ts');
      await compareFiles([a, b], flags, command);
    });
}
