import type { Command } from 'commander';
import { findCaptures } from '../findCaptures.ts';
import type { MeasureFlags } from '../measureOptions.ts';
import { refuseMeterForMany } from '../refuseMeterForMany.ts';
import { runCaptures } from '../runCaptures.ts';
import { sheetWriter } from './sheetWriter.ts';

/** The flags of `report` as commander hands them over. */
export interface ReportFlags extends MeasureFlags {
  readonly out: string;
  readonly png?: boolean;
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
  await runCaptures(
    found,
    flags,
    command,
    sheetWriter(files, { out, png, force, byChannel: voltage?.toLowerCase() === 'all' }),
  );
}
