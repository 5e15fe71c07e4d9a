import type { Command } from 'commander';
import { planKeys } from '../entry/grammar.ts';
import type { BenchCommandFlags } from './bench/benchCaptures.ts';
import { plainOption } from './commandOption.ts';
import { addFormatOptions, cardTheme } from './report/formatOptions.ts';
import { finiteNumber } from './synthesisOptions.ts';

const after = `
Examples:
  sineassay bench 0W=idle.csv 300W=heater.csv --claim "120 V ±5 %"
  sineassay bench --init evening/      writes evening/plan.yaml to fill in
  sineassay bench evening/plan.yaml

The folder of results gets bench.json; name it in a later plan under "earlier",
or with --earlier, to see that day beside this one.

Claims: those of measure, and over all captures "power 600 W",
"surge 2000 W for 5 s", "transfer < 20 ms", "capacity 500 Wh",
"efficiency > 85 %".

Exit code:
  0  measured, and every claim holds
  1  a claim fails, probably fails or can't be judged
  2  wrong words or plan, or a file that could not be measured (the others are)
  3  a defect of ours

Safety: mains voltage can kill. Switch off before you change a load or a probe.`;

/** Makes a command `bench`: several captures of one or more units as one test. */
export function defineBench(command: Command): void {
  const sheets = command
    .argument('[plan...]', 'a plan (.yaml), or captures as load=file')
    .option('--init <folder>', 'write a plan filled with the captures found there, and stop')
    .option('--force', 'replace files that are no earlier results of the same captures; with --init: a plan')
    .addOption(plainOption('claims'))
    .addOption(plainOption('label'));
  for (const { flag } of planKeys) {
    if (flag.isNumber) sheets.option(flag.words, flag.help, finiteNumber);
    else sheets.option(flag.words, flag.help);
  }
  sheets
    .addOption(plainOption('rule'))
    .option('--earlier <file>', 'bench.json of another day to compare with; repeatable', collected)
    .option('--sheets', 'also a sheet for each capture')
    .option('--png', 'also a picture of each sheet, 1920 × 1080; steps and transfers get theirs too')
    .option('--card [theme]', 'also a card of each: one message, light or dark', cardTheme);
  addFormatOptions(sheets, 'bench')
    .option('--out <folder>', 'where bench.json and the sheets go', 'reports')
    .option('--json', 'print the JSON document instead of text')
    .option('--quiet', 'no progress on the terminal')
    .addHelpText('after', after)
    .action(async (words: string[], flags: BenchCommandFlags) => {
      const { benchCaptures } = await import('./bench/benchCaptures.ts');
      await benchCaptures(words, flags, command);
    });
}

function collected(text: string, before: readonly string[] | undefined): readonly string[] {
  return [...(before ?? []), text];
}
