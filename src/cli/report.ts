import type { Command } from 'commander';
import { findCaptures } from './findCaptures.ts';
import { addMeasureOptions, claimWords, type MeasureFlags } from './measureOptions.ts';
import { refuseMeterForMany } from './refuseMeterForMany.ts';
import { sheetWriter } from './report/sheetWriter.ts';
import { runCaptures } from './runCaptures.ts';

interface ReportFlags extends MeasureFlags {
  readonly out: string;
  readonly png?: boolean;
  readonly force?: boolean;
}

const after = `
Example:
  sineassay report evening/ --label "Inverter A" --claim "pure sine" --png
  writes one sheet a capture into the folder reports: reports/NAME.svg, and with
  --png also reports/NAME.png.

Without a capture it takes the folder captures.

${claimWords}`;

/** Adds `report`: the answer, and a sheet for each capture. */
export function registerReport(program: Command): void {
  addMeasureOptions(
    program
      .command('report')
      .description('measure, and draw a sheet for each capture: its wave, figures and limits on one page')
      .argument('[capture...]', 'files, folders or patterns', ['captures']),
  )
    .option('--out <folder>', 'where the sheets go', 'reports')
    .option('--png', 'also a picture of 1920 × 1080')
    .option('--force', 'replace files that are no earlier result of the same capture')
    .addHelpText('after', after)
    .action(async (captures: string[], flags: ReportFlags, command: Command) => {
      const found = await findCaptures(captures);
      refuseMeterForMany(found, flags, command);
      const files = found.map(({ file }) => file);
      const { out, png = false, force = false, voltage } = flags;
      await runCaptures(
        found,
        flags,
        sheetWriter(files, { out, png, force, byChannel: voltage?.toLowerCase() === 'all' }),
      );
    });
}
