import { hypot } from '../base/elementary.ts';
import type { Figure } from '../base/figure.ts';
import { classifyWave } from '../judge/waveform/classifyWave.ts';
import { ASSUMED_INSTRUMENT, type Instrument } from '../measure/doubt/instrument.ts';
import { measureWave } from '../measure/measureWave.ts';
import type { WaveFigures } from '../measure/waveFigures.ts';
import { waveOfRms } from './changedWaves.ts';
import type { KnownWave } from './knownWave.ts';
import { sampleWave } from './sampleWave.ts';
import { waveNamed } from './waveNamed.ts';

/** One figure of one built-in capture, held against the truth. */
export interface CheckedFigure {
  readonly figure: string;
  readonly unit: string;
  readonly truth: number;
  readonly found: number;
  /** What a user would be told, with the instrument assumed as usual. */
  readonly uncertainty: number;
  /** What remains of it for a perfect instrument: noise, rounding, edges between samples, the method. */
  readonly ownUncertainty: number;
  readonly inside: boolean;
}

export interface CheckedWave {
  readonly wave: string;
  readonly sampleRateHz: number;
  readonly cycles: number;
  readonly bits: number;
  readonly kind: { readonly truth: string; readonly found: string };
  readonly figures: readonly CheckedFigure[];
  /** True where the kind is right and every figure is inside. */
  readonly holds: boolean;
}

const PERFECT: Instrument = {
  ...ASSUMED_INSTRUMENT,
  gainPercent: 0,
  probePercent: 0,
  offsetV: 0,
  timeBasePpm: 0,
  distortionPercent: 0,
};

const [RMS_V, FREQUENCY_HZ, NOISE_V] = [120, 60.07, 0.4];

/**
 * The analyser run on waves of known truth: every kind, at two rates and lengths, 8 and 12 bits.
 *
 * A figure is inside where its error is within the uncertainty that it claims, and within twice what it would
 * claim with a perfect instrument, since the one here is: that is four standard deviations, while one and
 * two of them are chance.
 *
 * @returns one entry a capture, lazily, since the whole takes some seconds; always the same.
 */
export function* selfcheck(): Generator<CheckedWave> {
  let seed = 0;
  for (const [name, shape] of builtInWaves) {
    const wave = waveOfRms(shape, RMS_V);
    for (const sampleRateHz of [20_000, 100_000]) {
      for (const cycles of [2.4, 5.3]) {
        for (const bits of [8, 12]) yield checked(name, wave, { sampleRateHz, cycles, bits, seed: ++seed });
      }
    }
  }
}

interface Setting {
  readonly sampleRateHz: number;
  readonly cycles: number;
  readonly bits: number;
  readonly seed: number;
}

function checked(name: string, wave: KnownWave, { sampleRateHz, cycles, bits, seed }: Setting): CheckedWave {
  const { truth } = wave;
  const samples = sampleWave(wave, {
    frequencyHz: FREQUENCY_HZ,
    sampleRateHz,
    cycles,
    startPhaseCycles: (seed * 0.618034) % 1,
    noiseRms: NOISE_V,
    bits,
    fullScale: 1.2 * Math.max(truth.peak, -truth.trough),
    seed,
  });
  const input = { samples, intervalS: 1 / sampleRateHz, startS: 0, stepSize: null, acCoupled: false };
  const usual = measureWave(input);
  const own = measureWave(input, { instrument: PERFECT }).figures;
  // By its definition the RMS counts the noise in.
  const rms = hypot(truth.rms, NOISE_V);
  const figures = [
    compare('RMS', 'V', rms, usual.figures, own, (f) => f.rms),
    compare('frequency', 'Hz', FREQUENCY_HZ, usual.figures, own, (f) => f.frequencyHz),
    compare('fundamental', 'V', truth.fundamentalRms, usual.figures, own, (f) => f.fundamental),
    compare(
      'THD',
      '%',
      100 * truth.thdRatio(usual.figures.thdOrders),
      usual.figures,
      own,
      (f) => f.thdPercent,
    ),
  ];
  const kind = { truth: wave.kind, found: classifyWave(usual).kind };
  const holds = kind.truth === kind.found && figures.every(({ inside }) => inside);
  return { wave: name, sampleRateHz, cycles, bits, kind, figures, holds };
}

function compare(
  figure: string,
  unit: string,
  truth: number,
  usual: WaveFigures,
  perfect: WaveFigures,
  of: (figures: WaveFigures) => Figure,
): CheckedFigure {
  const [told, own] = [of(usual), of(perfect)];
  if (told.value === null || own.value === null) {
    return { figure, unit, truth, found: 0, uncertainty: 0, ownUncertainty: 0, inside: false };
  }
  const error = Math.abs(told.value - truth);
  // Below the floor a figure claims no interval but a bound.
  const inside =
    told.notAbove !== undefined
      ? truth <= told.notAbove
      : error <= told.uncertainty && (own.notAbove !== undefined || error <= 2 * own.uncertainty);
  return {
    figure,
    unit,
    truth,
    found: told.value,
    uncertainty: told.uncertainty,
    ownUncertainty: own.uncertainty,
    inside,
  };
}

/** The waves that the analyser checks itself on: every kind, and the hard ones of each. */
const builtInWaves: readonly (readonly [name: string, wave: KnownWave])[] = [
  ['sine', waveNamed.sine({})],
  [
    'sine, 3 % third and fifth',
    waveNamed.harmonics({ harmonics: [3, 5].map((order) => ({ order, ratio: 0.03, phaseRad: order })) }),
  ],
  ['clipped sine', waveNamed.clipped({ clipRatio: 0.75 })],
  ['triangle', waveNamed.triangle({})],
  ['half-wave', waveNamed.halfwave({})],
  ['modified sine, duty 35 %', waveNamed.modified({ dutyRatio: 0.35, edgeCycles: 0.004 })],
  ['modified sine, duty 50 %', waveNamed.modified({ dutyRatio: 0.5 })],
  ['modified sine, droop 10 %', waveNamed.modified({ dutyRatio: 0.8, tiltRatio: 0.1, edgeCycles: 0.01 })],
  ['square', waveNamed.square({ tiltRatio: 0.05 })],
  ['staircase of 5 levels', waveNamed.staircase({ levels: 5 })],
  ['staircase of 17 levels', waveNamed.staircase({ levels: 17 })],
];
