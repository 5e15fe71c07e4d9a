import type { Command } from 'commander';
import {
  assayLog,
  budgetLines,
  type EnergyDocument,
  type EnergyResult,
  energyLines,
  failureLine,
  type JudgedLog,
  jsonText,
  judgedLog,
  judgedPair,
  type LogAssay,
  type LogTold,
  readEnergyLog,
  togetherSentence,
  wordedEnergy,
} from '../../entry/energy.ts';
import type { LogClaim } from '../../entry/energyGrammar.ts';
import { MeasureError } from '../../entry/grammar.ts';
import { exitCodes } from '../failures.ts';
import { type Found, findCaptures } from '../findCaptures.ts';
import { failedResult } from '../measureFile.ts';
import { measureFileOptions } from '../measureFiles.ts';
import { progressLine } from '../progressLine.ts';
import { digest, readSized, regularFile } from '../reading/readText.ts';

/** The options of `energy`, as commander hands them over. */
export interface EnergyFlags {
  readonly rated?: number;
  readonly ratedAh?: number;
  readonly claim?: readonly LogClaim[];
  readonly label?: string;
  readonly input?: string;
  readonly output?: string;
  readonly power?: string;
  readonly volts?: string;
  readonly amps?: string;
  readonly counter?: string;
  readonly side?: 'ac' | 'dc';
  readonly timeOrder?: 'day-month' | 'month-day';
  readonly instrument?: string;
  readonly rule: 'guarded' | 'simple';
  readonly all?: boolean;
  readonly budget?: boolean;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

type Failed = Extract<EnergyDocument['results'][number], { readonly error: unknown }>;

/** Reads logs, prints what is in them, and sets the exit code. */
export async function runEnergy(
  logs: readonly string[],
  flags: EnergyFlags,
  command: Command,
): Promise<void> {
  const { input, output, label, rated, ratedAh, rule, claim = [] } = flags;
  const refuse = (message: string): never =>
    command.error(`error: ${message}`, { exitCode: exitCodes.usage });
  if ((input === undefined) !== (output === undefined))
    refuse('--input and --output go together: name both logs');
  if (input !== undefined && logs.length > 0) refuse('with --input and --output no other log is named');
  if (input === undefined && logs.length === 0) refuse('name a log, or two with --input and --output');
  const { instrument } = await measureFileOptions(
    flags.instrument === undefined ? {} : { instrument: flags.instrument },
    command,
  );
  const told: LogTold = {
    ...(label === undefined ? {} : { label }),
    ...(rated === undefined ? {} : { ratedWh: rated }),
    ...(ratedAh === undefined ? {} : { ratedAh }),
    ...(instrument === undefined ? {} : { instrument }),
  };
  const question = { claims: claim, rule };
  const isPair = input !== undefined && output !== undefined;
  const found = isPair ? [{ file: input }, { file: output }] : await findCaptures(logs);
  const progress = progressLine(found.length, { quiet: flags.quiet });
  const results: (EnergyResult | Failed)[] = [];
  let together: EnergyDocument['together'];
  let answers = 0;
  const add = (judged: JudgedLog): void => {
    const result = wordedEnergy(judged.result);
    results.push(result);
    progress.clear();
    if (!flags.json) printAnswer(result, judged, flags, answers++ > 0);
  };
  const assays: (LogAssay | Failed)[] = [];
  for (const one of found) {
    progress.begin(one.file);
    const assay = await assayFile(one, flags, told);
    assays.push(assay);
    if ('error' in assay) {
      progress.clear();
      process.stderr.write(`${failureLine(assay)}\n`);
    }
    if (!isPair) {
      if ('error' in assay) results.push(assay);
      else add(judgedLog(assay, question));
    }
  }
  if (isPair) {
    const [a, b] = assays as [LogAssay | Failed, LogAssay | Failed];
    if ('error' in a || 'error' in b) {
      for (const one of [a, b]) {
        if ('error' in one) results.push(one);
        else add(judgedLog(one, question));
      }
    } else {
      const pair = judgedPair(a, b, question);
      pair.logs.forEach(add);
      together = pair.together;
      if (!flags.json) process.stdout.write(`\nTogether: ${togetherSentence(together)}\n`);
    }
  }
  if (flags.json) {
    const document: EnergyDocument = {
      schema: 'sineassay/energy@1',
      results,
      ...(together === undefined ? {} : { together }),
    };
    process.stdout.write(`${jsonText(document, 2)}\n`);
  }
  process.exitCode = results.some((one) => 'error' in one) ? exitCodes.usage : claimsCode(results);
}

/** One log from its file; what is wrong with it comes back as data, so that others go on. */
async function assayFile(
  { file, error }: Found,
  flags: EnergyFlags,
  told: LogTold,
): Promise<LogAssay | Failed> {
  try {
    if (error !== undefined) throw error;
    const { size } = await regularFile(file);
    const bytes = await readSized(file, size);
    const { power, volts, amps, counter, side, timeOrder } = flags;
    const log = readEnergyLog(bytes, {
      ...(power === undefined ? {} : { power }),
      ...(volts === undefined ? {} : { volts }),
      ...(amps === undefined ? {} : { amps }),
      ...(counter === undefined ? {} : { counter }),
      ...(side === undefined ? {} : { side }),
      ...(timeOrder === undefined ? {} : { timeOrder }),
    });
    return assayLog(log, { file, sha256: digest(bytes) }, told);
  } catch (problem) {
    if (!(problem instanceof MeasureError)) throw problem;
    return failedResult(file, problem);
  }
}

function printAnswer(
  result: EnergyResult,
  { budgets }: JudgedLog,
  flags: EnergyFlags,
  spaced: boolean,
): void {
  const width = Math.min(100, process.stdout.columns ?? 80);
  const lines = [
    ...energyLines(result, { width, all: flags.all === true }),
    ...(flags.budget ? budgetLines(budgets) : []),
  ];
  process.stdout.write(`${spaced ? '\n' : ''}${lines.join('\n')}\n`);
}

function claimsCode(results: readonly (EnergyResult | Failed)[]): number {
  const holds = results.every(
    (result) =>
      'error' in result ||
      result.claims.every(({ outcome }) => outcome === 'pass' || outcome === 'conditional pass'),
  );
  return holds ? exitCodes.ok : exitCodes.claim;
}
