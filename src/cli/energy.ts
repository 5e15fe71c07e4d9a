import { type Command, Option } from 'commander';
import { logClaimExamples, parseLogClaim, parseRating } from '../entry/energyGrammar.ts';
import { inCommander, plainOption } from './commandOption.ts';
import type { EnergyFlags } from './energy/runEnergy.ts';

const after = `
A log is a slow record of volts, amperes, watts or a counter, from its first row
to its last; files, folders and patterns are named as for measure.

Examples:
  sineassay energy evening/dc.csv --rated 380Wh --claim "capacity 380 Wh"
  sineassay energy --input dc.csv --output ac.csv --claim "efficiency > 85 %"

--input and --output name two logs of one unit: its DC side and its outlet over
the same discharge (conversion efficiency), or a charge and a discharge (round
trip, from full to full alone).

Claims:
  ${logClaimExamples
    .slice(0, 4)
    .map((example) => `"${example}"`)
    .join('  ')}
  ${logClaimExamples
    .slice(4)
    .map((example) => `"${example}"`)
    .join('  ')}

Instrument file: a line such as "powerGainPercent: 0.5" for each figure you know
of the meter that logged, half-widths of intervals; the rest is assumed.
Figures: voltageGainPercent, currentGainPercent, powerGainPercent, offsetV,
offsetA, offsetW, clockPpm.

Exit code:
  0  read, and every claim holds
  1  a claim fails, probably fails or can't be judged
  2  wrong words, or a file that could not be read (the others still are)
  3  a defect of ours`;

/** Makes a command `energy`: how long and how much, from slow logs. */
export function defineEnergy(command: Command): void {
  const column = (words: string, what: string): Option =>
    new Option(words, `${what}, where the log leaves that open`);
  command
    .argument('[log...]', 'files, folders or patterns')
    .option(
      '--rated <energy>',
      'what the unit is rated at, for example 380Wh',
      inCommander((text) => parseRating(text, 'Wh')),
    )
    .option(
      '--rated-ah <charge>',
      'the same in ampere-hours, for example 100Ah',
      inCommander((text) => parseRating(text, 'Ah')),
    )
    .addOption(
      new Option('--claim <text>', 'what the maker says, see below; repeatable').argParser(
        (text: string, before: EnergyFlags['claim']) => [...(before ?? []), inCommander(parseLogClaim)(text)],
      ),
    )
    .addOption(plainOption('label'))
    .option('--input <log>', 'what flows in: the DC side of the inverter, or a charge')
    .option('--output <log>', 'what comes out: the outlet, or a discharge')
    .addOption(column('--power <name>', 'the column of watts'))
    .addOption(column('--volts <name>', 'the column of volts'))
    .addOption(column('--amps <name>', 'the column of amperes'))
    .addOption(column('--counter <name>', 'the column that counts'))
    .addOption(
      new Option('--side <name>', 'which side of the inverter the log is from').choices(['ac', 'dc']),
    )
    .addOption(
      new Option('--time-order <name>', 'which comes first in its dates').choices(['day-month', 'month-day']),
    )
    .option('--instrument <file>', 'what is known of the meter, as YAML, see below')
    .addOption(plainOption('rule').default('guarded'))
    .option('--all', 'print everything: all runs, holes, counters and columns')
    .option('--budget', 'print how each uncertainty is made up')
    .option('--json', 'print one JSON document instead of text')
    .option('--quiet', 'no progress on the terminal')
    .addHelpText('after', after)
    .action(async (logs: string[], flags: EnergyFlags) => {
      const { runEnergy } = await import('./energy/runEnergy.ts');
      await runEnergy(logs, flags, command);
    });
}
