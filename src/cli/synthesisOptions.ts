import { InvalidArgumentError } from 'commander';
import { finiteNumber as numberIn } from '../entry/grammar.ts';
import type { LayoutName, ShapeName, SynthesisOptions } from '../entry/synthesis.ts';
import { inCommander } from './commandOption.ts';

/** The flags of `synth` as commander hands them over. */
export interface SynthFlags {
  readonly out: string;
  readonly rms: number;
  readonly peak?: number;
  readonly frequency: number;
  readonly rate: number;
  readonly cycles: number;
  readonly phase: number;
  readonly offset: number;
  readonly noise: number;
  readonly bits: number;
  readonly seed: number;
  readonly layout: LayoutName;
  readonly probe: number;
  readonly duty?: number;
  readonly edge: number;
  readonly tilt: number;
  readonly ringing?: number;
  readonly levels?: number;
  readonly angles?: readonly number[];
  readonly harmonic?: readonly Harmonic[];
  readonly ripple?: number;
  readonly rippleFrequency?: number;
  readonly clip?: number;
  readonly carrier?: number;
  readonly modulation?: number;
}

/** What a bench could see, and then some: beyond it numbers mean nothing and records fill no memory. */
const LIMITS: Readonly<Partial<Record<keyof SynthFlags, readonly [least: number, most: number]>>> = {
  rms: [0, 1e9],
  peak: [0, 1e9],
  frequency: [1e-6, 1e9],
  rate: [1e-6, 1e12],
  cycles: [0, 1e9],
  phase: [-1e6, 1e6],
  offset: [-1e9, 1e9],
  noise: [0, 1e6],
  bits: [0, 32],
  seed: [-(2 ** 53), 2 ** 53],
  probe: [1e-9, 1e9],
  levels: [0, 1001],
  ripple: [-1e6, 1e6],
  rippleFrequency: [1e-6, 1e12],
  carrier: [0, 10_001],
};
const MOST_SAMPLES = 1e8;
const HIGHEST_ORDER = 10_000;

/**
 * The flags in the units of the core: percent become ratios, degrees cycles.
 *
 * @throws RangeError for numbers that no bench has to do with, and for a record too long to be held.
 */
export function synthesisOptions(shape: ShapeName, flags: SynthFlags): SynthesisOptions {
  refuseAbsurd(flags);
  const { ripple = 2, rippleFrequency = 20_000, ringing } = flags;
  return {
    shape,
    rmsV: flags.rms,
    peakV: flags.peak,
    frequencyHz: flags.frequency,
    sampleRateHz: flags.rate,
    cycles: flags.cycles,
    startPhaseCycles: flags.phase / 360,
    offsetV: flags.offset,
    noiseRatio: flags.noise / 100,
    bits: flags.bits === 0 ? null : flags.bits,
    seed: flags.seed,
    layout: flags.layout,
    probeRatio: flags.probe,
    dutyRatio: ratio(flags.duty),
    edgeCycles: flags.edge / 100,
    tiltRatio: flags.tilt / 100,
    ringing: ringing === undefined ? undefined : { ratio: ringing / 100, order: 80, decayCycles: 0.012 },
    levels: flags.levels,
    anglesDeg: flags.angles,
    harmonics: flags.harmonic,
    ripple: { ratio: ripple / 100, order: rippleFrequency / flags.frequency },
    clipRatio: ratio(flags.clip),
    carrierRatio: flags.carrier,
    modulationRatio: flags.modulation,
  };
}

function ratio(percent: number | undefined): number | undefined {
  return percent === undefined ? undefined : percent / 100;
}

function refuseAbsurd(flags: SynthFlags): void {
  for (const [name, [least, most]] of Object.entries(LIMITS)) {
    const value = flags[name as keyof SynthFlags];
    if (typeof value === 'number' && !(value >= least && value <= most))
      throw new RangeError(`${name} must lie between ${least} and ${most}, not ${value}.`);
  }
  const samples = (flags.rate * flags.cycles) / flags.frequency;
  if (samples > MOST_SAMPLES) {
    throw new RangeError(
      `The record would hold ${samples.toPrecision(3)} samples, more than ${MOST_SAMPLES}: give a lower rate or fewer cycles.`,
    );
  }
  const order = flags.harmonic?.find((harmonic) => harmonic.order > HIGHEST_ORDER)?.order;
  if (order !== undefined)
    throw new RangeError(`The order of a harmonic is at most ${HIGHEST_ORDER}, not ${order}.`);
}

type Harmonic = NonNullable<SynthesisOptions['harmonics']>[number];

/** One more harmonic: `3=5` is order 3 at 5 % of the fundamental, `3=5@90` the same 90 degrees ahead. */
export function harmonic(text: string, earlier: readonly Harmonic[] = []): readonly Harmonic[] {
  const [, order, percent, degrees = '0'] = /^([^=]+)=([^@]+)(?:@(.+))?$/.exec(text) ?? [];
  if (order === undefined || percent === undefined) {
    throw new InvalidArgumentError('An order and a percentage are expected, like 3=5 or 3=5@90.');
  }
  const phaseRad = (finiteNumber(degrees) * Math.PI) / 180;
  return [...earlier, { order: finiteNumber(order), ratio: finiteNumber(percent) / 100, phaseRad }];
}

/** The number that an option's text stands for. */
export const finiteNumber: (text: string) => number = inCommander(numberIn);

/** The numbers of a list like `12,48`. */
export function finiteNumbers(text: string): readonly number[] {
  return text.split(',').map(finiteNumber);
}
