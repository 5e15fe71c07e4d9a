#!/usr/bin/env node
import { Command, CommanderError } from 'commander';
import { registerBench } from './bench.ts';
import { exitCodes } from './exitCodes.ts';
import { registerLimits } from './limits.ts';
import { registerMeasure } from './measure.ts';
import { version } from './program.ts';
import { registerReport } from './report.ts';
import { registerSelfcheck } from './selfcheck.ts';
import { registerSynth } from './synth.ts';

const cautions = `
Start here:
  sineassay measure capture.csv
  sineassay report capture.csv --claim "pure sine" --load "300 W resistive"

Safety: mains voltage can kill. Use an isolated or differential probe rated for
the voltage and category; a scope's ground clip is earth. Never connect an
inverter's output to a building's wiring. Local codes and licensed practice come
first. A result is a measurement, not a certificate.`;

async function main(): Promise<void> {
  // A reader that has seen enough (| head) closes the pipe: nothing to report.
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit();
      throw error;
    });
  }
  const program = new Command('sineassay')
    .description('From an oscilloscope capture of an AC outlet to an answer that stands: is it a pure sine?')
    .version(version)
    .showHelpAfterError('(see --help)')
    .exitOverride()
    .addHelpText('after', cautions);
  registerMeasure(program);
  registerReport(program);
  registerBench(program);
  registerLimits(program);
  registerSynth(program);
  registerSelfcheck(program);
  for (const command of program.commands) command.exitOverride();
  try {
    await program.parseAsync();
  } catch (error) {
    // Commander has printed its line already; help and version end with code 0.
    if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? 0 : exitCodes.usage;
    else {
      process.exitCode = exitCodes.defect;
      const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
      process.stderr.write(
        `sineassay: this is a defect of ours, please report it with the capture:\n${trace}\n`,
      );
    }
  }
}

await main();
