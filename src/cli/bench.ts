import { type Command, Option } from 'commander';
import { failureLine, MeasureError } from '../index.ts';
import { type NamedPlan, planInFile, planOfPairs, type SweepFlags } from './bench/namedPlan.ts';
import { type BenchFlags, runBench } from './bench/runBench.ts';
import { writePlan } from './bench/writePlan.ts';
import { exitCodes } from './exitCodes.ts';
import { failedResult } from './measureFile.ts';
import { finiteNumber } from './synth/finiteNumber.ts';

type Flags = BenchFlags & SweepFlags & { readonly init?: string; readonly force?: boolean };

/** What a plan states itself, so that these belong to pairs alone. */
const SWEEP_FLAGS = [
  'claim',
  'label',
  'nominal',
  'voltage',
  'current',
  'scale',
  'instrument',
  'rule',
  'earlier',
] as const satisfies readonly (keyof SweepFlags)[];

const after = `
Examples:
  sineassay bench 0W=idle.csv 300W=heater.csv 600W=kettle.csv --claim "120 V ±5 %"
  sineassay bench --init evening/      writes evening/plan.yaml to fill in
  sineassay bench evening/plan.yaml

The folder of results gets bench.json; name it in a later plan under "earlier",
or with --earlier, to see that day beside this one.

Claims: those of measure, and over all captures "power 600 W", "surge 1200 W",
"transfer < 20 ms", "capacity 500 Wh".

Exit code:
  0  measured, and every claim holds
  1  a claim fails, probably fails or can't be judged
  2  wrong words or plan, or a file that could not be measured (the others still are)
  3  a defect of ours

Safety: mains voltage can kill. Switch off before you change a load or a probe.`;

/** Adds `bench`: several captures of one or more units as one test. */
export function registerBench(program: Command): void {
  program
    .command('bench')
    .description('a whole bench test: voltage and wave over rising loads, steps, claims, units side by side')
    .argument('[plan...]', 'a plan (.yaml), or captures as load=file')
    .option('--init <folder>', 'write a plan filled with the captures found there, and stop')
    .option('--force', 'replace files that are no earlier results of the same captures; with --init: a plan')
    .option('--claim <text>', 'what the maker says, see below; repeatable', collected)
    .option('--label <text>', 'the unit under test')
    .option('--nominal <text>', 'what the outlet is meant to give, for example 120V/60Hz')
    .option('--voltage <name>', 'the channel to measure')
    .option('--current <name>', 'the channel of the current')
    .option('--scale <factor>', 'probe or divider ratio to multiply by', finiteNumber)
    .option('--instrument <file>', 'what is known of scope and probe, as YAML')
    .addOption(
      new Option('--rule <name>', 'guarded: a guard band of one uncertainty; simple: none').choices([
        'guarded',
        'simple',
      ]),
    )
    .option('--earlier <file>', 'bench.json of another day to compare with; repeatable', collected)
    .option('--sheets', 'also a sheet for each capture')
    .option('--out <folder>', 'where bench.json and the sheets go', 'reports')
    .option('--json', 'print the JSON document instead of text')
    .addHelpText('after', after)
    .action(async (words: string[], flags: Flags, command: Command) => {
      const refuse = (message: string): never =>
        command.error(`error: ${message}`, { exitCode: exitCodes.usage });
      const subject = flags.init ?? words.find((word) => !word.includes('=')) ?? 'load=file';
      try {
        if (flags.init !== undefined) {
          if (words.length > 0) refuse('--init takes a folder and nothing else');
          const { path, count } = await writePlan(flags.init, flags.force ?? false);
          const captures = count === 1 ? '1 capture' : `${count} captures`;
          process.stdout.write(
            `${path}: ${captures}. Fill in what you know, then: sineassay bench ${path}\n`,
          );
          return;
        }
        await runBench(await planNamed(words, flags, refuse), flags);
      } catch (error) {
        if (!(error instanceof MeasureError)) throw error;
        process.stderr.write(`${failureLine(failedResult(subject, error))}\n`);
        process.exitCode = exitCodes.usage;
      }
    });
}

/** A plan's file, or pairs: never both. */
async function planNamed(
  words: readonly string[],
  flags: Flags,
  refuse: (message: string) => never,
): Promise<NamedPlan> {
  const [first] = words;
  if (first === undefined) refuse('name a plan, or captures as load=file, such as 300W=heater.csv');
  const own = Object.fromEntries(
    SWEEP_FLAGS.flatMap((key) => (flags[key] === undefined ? [] : [[key, flags[key]]])),
  ) as SweepFlags;
  if (words.every((word) => /^[^=]+=./.test(word))) return planOfPairs(words, own);
  if (words.length > 1) refuse('name one plan, or nothing but captures as load=file');
  const [flag] = Object.keys(own);
  if (flag !== undefined) refuse(`--${flag} goes with load=file; a plan states it itself`);
  return planInFile(first);
}

function collected(text: string, before: readonly string[] | undefined): readonly string[] {
  return [...(before ?? []), text];
}
