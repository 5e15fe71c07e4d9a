import { type Command, InvalidArgumentError, Option } from 'commander';
import { MeasureError, parseClaim, parseNominal } from '../entry/grammar.ts';
import type { AssayOptions } from '../entry/measuring.ts';
import { finiteNumber } from './synthesisOptions.ts';

type Scale = NonNullable<AssayOptions['scales']>[number];
type Skew = NonNullable<AssayOptions['skews']>[number];
type Claim = NonNullable<AssayOptions['claims']>[number];

/** The options that `measure` and `report` share, as commander hands them over. */
export interface MeasureFlags {
  readonly claim?: readonly Claim[];
  readonly label?: string;
  readonly load?: string;
  readonly nominal?: NonNullable<AssayOptions['nominal']>;
  readonly voltage?: string;
  readonly current?: string;
  readonly dcInput?: NonNullable<AssayOptions['directInput']>;
  readonly skew?: readonly Skew[];
  readonly scale?: readonly Scale[];
  readonly invert?: readonly string[];
  readonly sampleRate?: number;
  readonly meter?: number;
  readonly meterDc?: boolean;
  /** A file. */
  readonly instrument?: string;
  readonly rule: 'guarded' | 'simple';
  readonly orders: number;
  readonly sineThd: number;
  readonly all?: boolean;
  readonly windows?: boolean;
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
  return command
    .option('--claim <text>', 'what the maker says, see below; repeatable', collect(grammar(parseClaim)))
    .option('--label <text>', 'the unit under test')
    .option(
      '--load <text>',
      'the load on it, for example "300 W resistive"; else that in the file\'s name. A measured one comes first',
    )
    .option(
      '--nominal <text>',
      'what the outlet is meant to give, for example 120V/60Hz',
      grammar(parseNominal),
    )
    .option('--voltage <name>', 'the channel to measure; all: each of them; CH1-CH2: their difference')
    .option('--current <name>', 'the current channel, or FILE or FILE:NAME of an export of its own')
    .option('--dc-input <volts,amperes>', 'the two channels at the DC input, for the efficiency', dcInput)
    .option('--skew <name=seconds>', 'how late a channel shows an event, repeatable', collect(skew))
    .option(
      '--scale <[name=]factor>',
      'probe or divider ratio to multiply by; without a name: the measured channel',
      collect(scale),
    )
    .option(
      '--invert <name>',
      'a channel to turn upside down, repeatable',
      collect((text: string) => text),
    )
    .option('--sample-rate <hertz>', 'samples a second, for a file that has no time', positive)
    .option('--meter <volts>', "a multimeter's reading taken at the same time, for one capture", positive)
    .option('--meter-dc', 'that meter counts DC in (most handheld meters do not)')
    .option('--instrument <file>', 'what is known of scope and probe, as YAML, see below')
    .addOption(
      new Option('--rule <name>', 'guarded: a guard band of one uncertainty; simple: none')
        .choices(['guarded', 'simple'])
        .default('guarded'),
    )
    .option('--orders <count>', 'highest harmonic', orders, 50)
    .option('--sine-thd <percent>', 'THD up to which a smooth wave is a pure sine', positive, 5)
    .option('--all', 'print everything: all figures, harmonics, findings and notices')
    .option('--windows', 'list each window of 10 or 12 cycles (IEC 61000-4-7)')
    .option('--budget', 'print how each uncertainty is made up')
    .option('--json', 'print one JSON document instead of text')
    .option('--quiet', 'no progress on the terminal');
}

function collect<T>(parse: (text: string) => T): (text: string, before: readonly T[] | undefined) => T[] {
  return (text, before) => [...(before ?? []), parse(text)];
}

/** What the core's own grammar refuses, in commander's terms. */
function grammar<T>(parse: (text: string) => T): (text: string) => T {
  return (text) => {
    try {
      return parse(text);
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      throw new InvalidArgumentError(`${error.message} ${error.detail.advice ?? ''}`);
    }
  };
}

/** Beyond any rate, voltage or share. */
const LARGEST = 1e15;

function positive(text: string): number {
  const value = finiteNumber(text);
  if (!(value > 0)) throw new InvalidArgumentError('A number above zero is expected.');
  if (value > LARGEST) throw new InvalidArgumentError(`A number up to ${LARGEST} is expected.`);
  return value;
}

function orders(text: string): number {
  const value = finiteNumber(text);
  if (!Number.isInteger(value) || value < 2 || value > 500) {
    throw new InvalidArgumentError('A whole number from 2 to 500 is expected.');
  }
  return value;
}

function scale(text: string): Scale {
  const at = text.lastIndexOf('=');
  const factor = finiteNumber(text.slice(at + 1));
  if (factor === 0) throw new InvalidArgumentError('A scale of zero leaves nothing to measure.');
  return { channel: at < 0 ? null : text.slice(0, at), factor };
}

function skew(text: string): Skew {
  const at = text.lastIndexOf('=');
  if (at <= 0) throw new InvalidArgumentError('NAME=SECONDS is expected, for example CH2=4e-6.');
  return { channel: text.slice(0, at), seconds: finiteNumber(text.slice(at + 1)) };
}

function dcInput(text: string): NonNullable<AssayOptions['directInput']> {
  const [voltage, current, ...more] = text.split(',').map((name) => name.trim());
  if (!voltage || !current || more.length > 0) {
    throw new InvalidArgumentError('Two channel names are expected, volts first, for example CH3,CH4.');
  }
  return { voltage, current };
}
