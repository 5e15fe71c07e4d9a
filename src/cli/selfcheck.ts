import type { Command } from 'commander';
import { exitCodes } from './failures.ts';

const after = `
Each line: a wave, how it was sampled, and for each figure its error against the
uncertainty that it claims. The instrument is perfect but for noise and bits, so
an error must also stay within twice what such an instrument would claim.

Example:
  sineassay selfcheck

Exit code: 0 all inside; 1 some figure or kind is outside.`;

/** Makes a command `selfcheck`: the analyser run on waves of known truth. */
export function defineSelfcheck(command: Command): void {
  command.addHelpText('after', after).action(async () => {
    const { selfcheck, selfcheckLine } = await import('../entry/checking.ts');
    let [inside, outside] = [0, 0];
    for (const capture of selfcheck()) {
      process.stdout.write(`${selfcheckLine(capture)}\n`);
      if (capture.holds) inside++;
      else outside++;
    }
    process.stdout.write(`${inside} captures inside, ${outside} outside\n`);
    process.exitCode = outside > 0 ? exitCodes.claim : exitCodes.ok;
  });
}
