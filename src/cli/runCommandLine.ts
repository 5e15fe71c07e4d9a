import { Command, CommanderError } from 'commander';
import { exitCodes } from './failures.ts';

const cautions = `
Start here:
  sineassay measure capture.csv
  sineassay report capture.csv --claim "pure sine" --load "300 W resistive"

Safety: mains voltage can kill. Use an isolated or differential probe rated for
the voltage and category; a scope's ground clip is earth. Never connect an
inverter's output to a building's wiring. Local codes and licensed practice come
first. A result is a measurement, not a certificate.`;

/**
 * The commands. Each is loaded only where its name stands among the words, and loads what it works with only when
 * it runs, so that neither a start nor a help text waits for what it doesn't need.
 */
const commands: Readonly<
  Record<string, { readonly does: string; readonly define: () => Promise<(command: Command) => void> }>
> = {
  measure: {
    does: 'say what the wave is: kind, volts, hertz, crest factor, distortion, and how sure',
    define: async () => (await import('./measure.ts')).defineMeasure,
  },
  report: {
    does: 'measure, and draw a sheet for each capture: its wave, figures and limits on one page',
    define: async () => (await import('./report.ts')).defineReport,
  },
  energy: {
    does: 'say what a slow log holds: how long, how many watt-hours, what of the rating, how a charge goes',
    define: async () => (await import('./energy.ts')).defineEnergy,
  },
  bench: {
    does: 'a whole bench test: voltage and wave over rising loads, steps, claims, units side by side',
    define: async () => (await import('./bench.ts')).defineBench,
  },
  compare: {
    does: 'hold two sheets, captures or results against each other: what differs, and is it more than the doubt',
    define: async () => (await import('./compare.ts')).defineCompare,
  },
  recheck: {
    does: 'check a sheet: against itself, and against its capture measured again',
    define: async () => (await import('./recheck.ts')).defineRecheck,
  },
  page: {
    does: 'write the offline page: captures dropped on it are measured in the browser, nothing is sent',
    define: async () => (await import('./page.ts')).definePage,
  },
  limits: {
    does: 'print the reference limits with their source, edition and provenance',
    define: async () => (await import('./limits.ts')).defineLimits,
  },
  schema: {
    does: 'print the JSON Schema of a document that this program writes',
    define: async () => (await import('./schema.ts')).defineSchema,
  },
  synth: {
    does: 'write a test capture of a known wave, with its true figures beside it',
    define: async () => (await import('./synth.ts')).defineSynth,
  },
  selfcheck: {
    does: 'run the analyser on built-in waves of known truth and compare',
    define: async () => (await import('./selfcheck.ts')).defineSelfcheck,
  },
};

/** Does what the words ask for, and sets the exit code. */
export async function runCommandLine(words: readonly string[], version: string): Promise<void> {
  // A reader that has seen enough (| head) closes the pipe: nothing to report.
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit();
      throw error;
    });
  }
  try {
    const program = await programFor(words, version);
    await program.parseAsync(words, { from: 'user' });
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

async function programFor(words: readonly string[], version: string): Promise<Command> {
  const program = new Command('sineassay')
    .description('From an oscilloscope capture of an AC outlet to an answer that stands: is it a pure sine?')
    .version(version)
    .showHelpAfterError('(see --help)')
    .exitOverride()
    .addHelpText('after', cautions);
  for (const [name, { does, define }] of Object.entries(commands)) {
    const command = program.command(name).description(does).exitOverride();
    if (words.includes(name)) (await define())(command);
  }
  return program;
}
