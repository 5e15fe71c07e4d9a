import type { Command } from 'commander';
import { selfcheck, selfcheckLine } from '../index.ts';
import { exitCodes } from './exitCodes.ts';

const after = `
Each line: a wave, how it was sampled, and for each figure its error against the
uncertainty that it claims. The instrument is perfect but for noise and bits, so
an error must also stay within twice what such an instrument would claim.

Example:
  sineassay selfcheck

Exit code: 0 all inside; 1 some figure or kind is outside.`;

/** Adds `selfcheck`: the analyser run on waves of known truth. */
export function registerSelfcheck(program: Command): void {
  program
    .command('selfcheck')
    .description('run the analyser on built-in waves of known truth and compare')
    .addHelpText('after', after)
    .action(() => {
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
