import type { Command } from 'commander';
import type { CardTheme } from '../../entry/evidence.ts';
import type { MeasureResult } from '../../entry/measuring.ts';
import { findCaptures } from '../findCaptures.ts';
import { refuseMeterForMany } from '../measureFiles.ts';
import type { MeasureFlags } from '../measureOptions.ts';
import { runCaptures } from '../runCaptures.ts';
import { finishRun } from './finishRun.ts';
import { type FormatFlags, formatsOf } from './formatOptions.ts';
import { sheetWriter } from './sheetWriter.ts';

/** The flags of `report` as commander hands them over. */
export interface ReportFlags extends MeasureFlags, FormatFlags {
  readonly out: string;
  readonly png?: boolean;
  /** True: light, as it is without a theme. */
  readonly card?: CardTheme | true;
  readonly force?: boolean;
}

/** What `report` does. */
export async function reportCaptures(
  captures: readonly string[],
  flags: ReportFlags,
  command: Command,
): Promise<void> {
  const found = await findCaptures(captures);
  refuseMeterForMany(found, flags, command);
  const files = found.map(({ file }) => file);
  const { out, png = false, force = false, voltage } = flags;
  const card = flags.card === true ? 'light' : (flags.card ?? null);
  const formats = formatsOf(flags);
  const byChannel = voltage?.toLowerCase() === 'all';
  const results = await runCaptures(
    found,
    flags,
    command,
    sheetWriter(files, { out, png, card, formats, force, byChannel }),
  );
  const measured = results.filter((result): result is MeasureResult => !('error' in result));
  await finishRun(measured, { out, formats, force });
}
