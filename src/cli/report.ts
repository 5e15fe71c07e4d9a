import type { Command } from 'commander';
import { addMeasureOptions, claimWords } from './measureOptions.ts';
import { addFormatOptions, cardTheme } from './report/formatOptions.ts';
import type { ReportFlags } from './report/reportCaptures.ts';

const after = `
Example:
  sineassay report evening/ --label "Inverter A" --claim "pure sine" --png
  writes one sheet a capture into the folder reports: reports/NAME.svg, and with
  --png also reports/NAME.png. reports/index.html, for a browser,
  shows every sheet of the folder, those of earlier runs too.

Without a capture it takes the folder captures.

${claimWords}`;

/** Makes a command `report`: the answer, and a sheet for each capture. */
export function defineReport(command: Command): void {
  const measuring = addMeasureOptions(
    command.argument('[capture...]', 'files, folders or patterns', ['captures']),
  )
    .option('--out <folder>', 'where the sheets go', 'reports')
    .option('--png', 'also a picture of 1920 × 1080')
    .option('--card [theme]', 'also a card for a video: one message, 1920 × 1080, light or dark', cardTheme);
  addFormatOptions(measuring, 'NAME')
    .option('--force', 'replace files that are no earlier result of the same capture')
    .addHelpText('after', after)
    .action(async (captures: string[], flags: ReportFlags) => {
      const { reportCaptures } = await import('./report/reportCaptures.ts');
      await reportCaptures(captures, flags, command);
    });
}
