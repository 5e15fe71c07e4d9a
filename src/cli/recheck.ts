import type { Command } from 'commander';
import type { RecheckFlags } from './recheck/recheckFile.ts';

const after = `
Examples:
  sineassay recheck reports/300w.svg evening/300w.csv
  measures the capture again, as the sheet says it was measured, and compares
  every value that the sheet shows or carries.

  sineassay recheck reports/300w.svg
  without the capture: whether the sheet was changed after it was drawn. Only
  the capture tells whether its data are those of the capture. Of a sheet that
  another version made only the figures can be checked.

  sineassay recheck reports/bench/sweep-red.svg evening/
  of a folder, the captures that belong to the sheet are found by their SHA-256.

Exit code:
  0  the same
  1  something differs; each line says what
  2  wrong words, or a file that could not be read
  3  a defect of ours`;

/** Makes a command `recheck`: whether a sheet is what its capture gives. */
export function defineRecheck(command: Command): void {
  command
    .argument('<sheet>', 'a sheet (.svg)')
    .argument('[capture...]', 'its capture or captures: files, folders or patterns')
    .option(
      '--current <file>',
      'the export that the current was taken from, where that was a file of its own',
    )
    .option('--json', 'print one JSON document instead of text')
    .addHelpText('after', after)
    .action(async (sheet: string, captures: string[], flags: RecheckFlags) => {
      const { recheckFile } = await import('./recheck/recheckFile.ts');
      await recheckFile(sheet, captures, flags);
    });
}
