import type { Command } from 'commander';
import { findCaptures } from './findCaptures.ts';
import { refuseMeterForMany } from './measureFiles.ts';
import type { MeasureFlags } from './measureOptions.ts';
import { runCaptures } from './runCaptures.ts';

/** What `measure` does. */
export async function measureCaptures(
  captures: readonly string[],
  flags: MeasureFlags,
  command: Command,
): Promise<void> {
  const all = await findCaptures(captures);
  const { first, of } = flags.share ?? { first: 1, of: 1 };
  const found = all.filter((_, i) => i % of === first - 1);
  refuseMeterForMany(found, flags, command);
  await runCaptures(found, flags, command);
}
