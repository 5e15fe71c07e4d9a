import type { Command } from 'commander';
import { exitCodes } from './exitCodes.ts';
import type { Found } from './findCaptures.ts';
import type { MeasureFlags } from './measureOptions.ts';

/** A meter's reading belongs to one moment and one outlet. */
export function refuseMeterForMany(found: readonly Found[], flags: MeasureFlags, command: Command): void {
  if (flags.meter === undefined) return;
  const refuse = (message: string): never => command.error(message, { exitCode: exitCodes.usage });
  if (found.length > 1) {
    refuse(
      'error: --meter is a reading for one capture: measure that one, then use the factor it prints for the others',
    );
  }
  if (flags.voltage?.toLowerCase() === 'all') {
    refuse('error: --meter is a reading of one channel: name that channel with --voltage');
  }
}
