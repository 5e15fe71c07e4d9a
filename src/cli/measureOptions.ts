import type { Command } from 'commander';
import { flags, type Told } from '../entry/grammar.ts';
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
  readonly quiet?: boolean;
}

/** For the end of a help text. */
export const claimWords = `Claims:
  "pure sine"  "120 V ±5 %"  "60 Hz ±0.5 Hz"  "THD < 3 %"  "crest 1.38..1.45"
  "modified sine"  "230 V +6/-10 %"  "110..127 V"  "transfer < 20 ms"
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
