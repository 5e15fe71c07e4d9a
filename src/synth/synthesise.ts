import { decimalExponent, powerOfTen } from '../base/elementary.ts';
import { offsetWave, scaledWave, waveOfRms } from './changedWaves.ts';
import type { KnownWave, WaveTruth } from './knownWave.ts';
import { sampleWave } from './sampleWave.ts';
import { type ShapeName, type ShapeOptions, waveNamed } from './waveNamed.ts';
import { type LayoutName, writeCapture } from './writeCapture.ts';

/** What to make: a wave, how it is recorded, and how the record is written. */
export interface SynthesisOptions extends ShapeOptions {
  readonly shape: ShapeName;
  /** Of the wave without `offsetV`; ignored where `peakV` is given. Default 120. */
  readonly rmsV?: number | undefined;
  /** Largest distance of the wave from zero, without `offsetV`. */
  readonly peakV?: number | undefined;
  /** Default 60. */
  readonly frequencyHz?: number | undefined;
  /** Default 100 000. */
  readonly sampleRateHz?: number | undefined;
  /** Default 5. */
  readonly cycles?: number | undefined;
  /** Default 0. */
  readonly startPhaseCycles?: number | undefined;
  /** Time of the first sample. Default: the record's middle is 0, where a trigger stands. */
  readonly startS?: number | undefined;
  /** Default 0. */
  readonly offsetV?: number | undefined;
  /**
   * White Gaussian noise: its RMS over that of the wave without `offsetV`, or over `rmsV` where the wave is
   * nothing. Default 0.01.
   */
  readonly noiseRatio?: number | undefined;
  /** Default 8; null: not quantised. */
  readonly bits?: number | null | undefined;
  /** Half the converter's range. Default: four divisions of the 1-2-5 setting that holds the wave. */
  readonly fullScaleV?: number | undefined;
  /** Default 1. */
  readonly seed?: number | undefined;
  /** Default `comma`. */
  readonly layout?: LayoutName | undefined;
  /** Volts at the probe's tip for one volt in the file. Default 1. */
  readonly probeRatio?: number | undefined;
  /** Default `Output`. */
  readonly channelName?: string | undefined;
  readonly comment?: string | undefined;
}

export interface Synthesis {
  /** The capture file. */
  readonly bytes: Uint8Array;
  readonly truth: StatedTruth;
}

/**
 * A capture with its truth: exact figures of the wave, before noise and quantisation.
 *
 * @throws RangeError for options that no such wave or record has.
 */
export function synthesise(options: SynthesisOptions): Synthesis {
  const { shape, rmsV = 120, peakV, frequencyHz = 60, sampleRateHz = 100_000, cycles = 5 } = options;
  const { startPhaseCycles = 0, offsetV = 0, noiseRatio = 0.01, bits = 8, seed = 1 } = options;
  const { layout = 'comma', probeRatio = 1, channelName = 'Output', comment } = options;
  if (!(probeRatio > 0)) throw new RangeError(`the probe ratio must be positive, not ${probeRatio}`);
  const swing = atSize(waveNamed[shape](options), rmsV, peakV);
  const wave = offsetWave(swing, offsetV);
  const noiseRmsV = noiseRatio * (swing.truth.rms > 0 ? swing.truth.rms : rmsV);
  const fullScale = options.fullScaleV ?? fittingFullScale(wave.truth, noiseRmsV);
  const volts = sampleWave(wave, {
    ...{ frequencyHz, sampleRateHz, cycles, startPhaseCycles, seed },
    noiseRms: noiseRmsV,
    ...(bits !== null && { bits, fullScale }),
  });
  const intervalS = 1 / sampleRateHz;
  const bytes = writeCapture(layout, {
    channels: [{ name: channelName, unit: 'V', samples: volts.map((value) => value / probeRatio) }],
    startS: options.startS ?? -Math.floor(volts.length / 2) * intervalS,
    intervalS,
    ...(comment !== undefined && { comment }),
  });
  const record = { samples: volts.length, sampleRateHz, noiseRmsV, bits, seed, layout, probeRatio };
  return { bytes, truth: statedTruth(wave, frequencyHz, record) };
}

function atSize(wave: KnownWave, rmsV: number, peakV: number | undefined): KnownWave {
  const { rms, peak, trough } = wave.truth;
  if (rms === 0) return wave;
  return peakV === undefined ? waveOfRms(wave, rmsV) : scaledWave(wave, peakV / Math.max(peak, -trough));
}

const ORDERS = 50;

/** Of the whole: what is less is a rounding of nothing. */
const ROUNDING = 1e-12;

/** The truth of a made capture as JSON. Keys as in the result of a measurement, so that both compare by key. */
export interface StatedTruth {
  readonly schema: 'sineassay/truth@1';
  readonly note: string;
  readonly kind: KnownWave['kind'];
  /** Null where the wave does not swing. */
  readonly frequencyHz: number | null;
  readonly rmsV: number;
  readonly meanV: number;
  readonly peakV: number;
  readonly troughV: number;
  /** Null for a wave of nothing. */
  readonly crestFactor: number | null;
  readonly formFactor: number | null;
  readonly fundamentalV: number;
  /** Null where there is no fundamental. */
  readonly thdPercent: number | null;
  readonly thdOrders: number;
  /** Orders 1 to thdOrders; empty where there is no fundamental. */
  readonly harmonics: readonly {
    readonly order: number;
    readonly rmsV: number;
    readonly percent: number;
    readonly phaseDeg: number;
  }[];
  readonly record: RecordSettings;
}

/** How the wave was recorded. */
interface RecordSettings {
  readonly samples: number;
  readonly sampleRateHz: number;
  readonly noiseRmsV: number;
  readonly bits: number | null;
  readonly seed: number;
  readonly layout: string;
  readonly probeRatio: number;
}

/** The figures of a known wave, in volts at the probe's tip. */
function statedTruth({ kind, truth }: KnownWave, frequencyHz: number, record: RecordSettings): StatedTruth {
  const swings = truth.fundamentalRms > 0;
  return {
    schema: 'sineassay/truth@1',
    note: 'exact figures of the wave itself, before noise and quantisation',
    kind,
    frequencyHz: swings ? frequencyHz : null,
    rmsV: truth.rms,
    meanV: Math.abs(truth.mean) > ROUNDING * truth.rms ? truth.mean : 0,
    peakV: truth.peak,
    troughV: truth.trough,
    crestFactor: truth.rms > 0 ? truth.crestFactor() : null,
    formFactor: truth.rms > 0 ? truth.formFactor() : null,
    fundamentalV: truth.fundamentalRms,
    thdPercent: swings ? 100 * truth.thdRatio(ORDERS) : null,
    thdOrders: ORDERS,
    harmonics: swings ? Array.from({ length: ORDERS }, (_, i) => harmonicOf(truth, i + 1)) : [],
    record,
  };
}

/** Phases are given from a rising zero of the fundamental, as a measurement gives them. */
function harmonicOf(truth: KnownWave['truth'], order: number): StatedTruth['harmonics'][number] {
  const { rms, phaseRad } = truth.harmonic(order);
  if (rms < ROUNDING * truth.fundamentalRms) return { order, rmsV: 0, percent: 0, phaseDeg: 0 };
  const fromFundamental = phaseRad - order * truth.harmonic(1).phaseRad;
  return {
    order,
    rmsV: rms,
    percent: (100 * rms) / truth.fundamentalRms,
    phaseDeg: principalDegrees(fromFundamental),
  };
}

/**
 * Half the screen of a scope set by hand: four divisions of the smallest 1-2-5 setting that holds the wave
 * and three times its noise.
 *
 * @returns volts, positive; 4 V for a wave of nothing.
 */
function fittingFullScale({ peak, trough }: WaveTruth, noiseRmsV: number): number {
  const perDivision = (Math.max(peak, -trough) + 3 * noiseRmsV) / 4;
  if (perDivision === 0) return 4;
  const power = powerOfTen(decimalExponent(perDivision));
  return 4 * power * ([1, 2, 5].find((factor) => factor * power >= perDivision) ?? 10);
}

/** An angle in degrees, brought into (−180, 180]. */
function principalDegrees(angleRad: number): number {
  const degrees = (angleRad * 180) / Math.PI;
  return degrees - 360 * Math.ceil((degrees - 180) / 360);
}
