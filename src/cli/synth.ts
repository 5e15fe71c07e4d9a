import { type Command, InvalidArgumentError, Option } from 'commander';
import { errorWords, MeasureError } from '../entry/grammar.ts';
import { captureLayouts, type ShapeName, synthesise, waveNamed } from '../entry/synthesis.ts';
import { exitCodes } from './failures.ts';
import {
  finiteNumber,
  finiteNumbers,
  harmonic,
  type SynthFlags,
  synthesisOptions,
} from './synthesisOptions.ts';
import { writeWhole } from './writing/writeOutput.ts';

const waveNames = Object.keys(waveNamed);
const layoutNames = Object.keys(captureLayouts);

const after = `
Example:
  sineassay synth modified --duty 55 --edge 0.3 --rms 117 --out test.csv
  writes test.csv and, beside it, test.csv.truth.json with the figures that a
  measurement should find.

Layouts:
${Object.entries(captureLayouts)
  .map(([name, { words }]) => `  ${name.padEnd(10)} ${words}`)
  .join('\n')}`;

/** Makes a command `synth`: a test capture of a known wave, and its truth as JSON. */
export function defineSynth(command: Command): void {
  command
    .argument('<wave>', `one of ${waveNames.join(', ')}`, waveName)
    .requiredOption('--out <file>', 'the capture to write')
    .option('--rms <volts>', 'RMS of the wave', finiteNumber, 120)
    .option('--peak <volts>', 'its peak, instead of the RMS', finiteNumber)
    .option('--frequency <hertz>', 'of the wave', finiteNumber, 60)
    .option('--rate <hertz>', 'samples a second', finiteNumber, 100_000)
    .option('--cycles <count>', 'length of the record, need not be whole', finiteNumber, 5)
    .option('--phase <degrees>', 'of the wave at the first sample', finiteNumber, 0)
    .option('--offset <volts>', 'DC to add', finiteNumber, 0)
    .option('--noise <percent>', 'white noise, RMS, of the RMS of the wave', finiteNumber, 1)
    .option('--bits <count>', 'resolution of the scope; 0: none', finiteNumber, 8)
    .option('--seed <number>', 'of the noise: the same seed gives the same file', finiteNumber, 1)
    .addOption(
      new Option('--layout <name>', 'how the file is laid out, see below')
        .choices(layoutNames)
        .default('comma'),
    )
    .option('--probe <ratio>', 'write the volts divided by this, as a probe gives them', finiteNumber, 1)
    .option('--duty <percent>', 'modified: time not spent at zero', finiteNumber)
    .option('--edge <percent>', 'waves with edges: time of an edge, of the period', finiteNumber, 0)
    .option('--tilt <percent>', 'modified, square: how much a top droops', finiteNumber, 0)
    .option('--ringing <percent>', 'modified: ringing at the start of each top', finiteNumber)
    .option('--levels <count>', 'staircase: odd, 5 and up', finiteNumber)
    .option(
      '--angles <degrees>',
      'staircase, twolevel, threelevel: switching angles like 12,48',
      finiteNumbers,
    )
    .option('--harmonic <order=percent>', 'harmonics: 3=5, or 3=5@90 in degrees; repeatable', harmonic)
    .option('--ripple <percent>', 'ripple: its size, of the fundamental', finiteNumber)
    .option('--ripple-frequency <hertz>', 'ripple: need not be a harmonic', finiteNumber)
    .option('--clip <percent>', 'clipped: where the tops are cut, of the peak of the sine', finiteNumber)
    .option('--carrier <count>', 'pwm: carrier cycles a period, odd', finiteNumber)
    .option('--modulation <ratio>', 'pwm: above 0, at most 1', finiteNumber)
    .addHelpText('after', after)
    .action(async (wave: ShapeName, flags: SynthFlags) => {
      try {
        const { bytes, truth } = synthesise(synthesisOptions(wave, flags));
        await writeWhole(flags.out, bytes);
        await writeWhole(`${flags.out}.truth.json`, `${JSON.stringify(truth, null, 2)}\n`);
        process.stdout.write(`${flags.out}: ${truth.kind}; its true figures: ${flags.out}.truth.json\n`);
      } catch (error) {
        // A wave or record that can't be, or a place that can't be written to: no defect here.
        if (!(error instanceof RangeError || error instanceof MeasureError)) throw error;
        const words = error instanceof MeasureError ? errorWords(error) : error;
        const found = 'received' in words ? ` Found ${words.received}.` : '';
        command.error(`error: ${words.message}${found}`, { exitCode: exitCodes.usage });
      }
    });
}

function waveName(text: string): string {
  if (!waveNames.includes(text)) throw new InvalidArgumentError(`Known are ${waveNames.join(', ')}.`);
  return text;
}
