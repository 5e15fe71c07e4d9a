import type { Command } from 'commander';
import { claimExamples, everyClaimExample, flags, type Told } from '../entry/grammar.ts';
import { commandOption } from './commandOption.ts';

/** The options that `measure`, `report` and `compare` share, as commander hands them over: by their names. */
export interface MeasureFlags
  extends Partial<Pick<Told, 'perWindow' | 'voltage'>>,
    Readonly<Record<string, unknown>> {
  readonly meterV?: number;
  /** A file. */
  readonly instrument?: string;
  readonly all?: boolean;
  readonly budget?: boolean;
  readonly json?: boolean;
  /** Of `measure` alone: a result a line. */
  readonly jsonLines?: boolean;
  /** Of `measure` alone. */
  readonly share?: Share;
  readonly quiet?: boolean;
}

/** Every so many captures, from which one on, counted from 1. */
export interface Share {
  readonly first: number;
  readonly of: number;
}

const others = everyClaimExample.filter((example) => !claimExamples.includes(example));
const claims = [...claimExamples, 'modified sine', ...others].map((example) => `"${example}"`);
const CLAIMS_A_LINE = 5;

/** For the end of a help text. */
export const claimWords: string = `Claims:
  ${claims.slice(0, CLAIMS_A_LINE).join('  ')}
  ${claims.slice(CLAIMS_A_LINE).join('  ')}
  (+- stands for ±)

Instrument file: a line such as "gainPercent: 1.5" for each figure you know,
half-widths of intervals; the rest is assumed. Figures: bits, gainPercent,
probePercent, offsetV, timeBasePpm, distortionPercent, bandwidthHz,
meterPercent, meterBandwidthHz.`;

export function addMeasureOptions(command: Command): Command {
  for (const flag of flags) if (!flag.isOfAnswer) command.addOption(commandOption(flag));
  command.option('--all', 'print everything: all figures, harmonics, findings and notices');
  for (const flag of flags) if (flag.isOfAnswer) command.addOption(commandOption(flag));
  return command
    .option('--budget', 'print how each uncertainty is made up')
    .option('--json', 'print one JSON document instead of text')
    .option('--quiet', 'no progress on the terminal');
}
