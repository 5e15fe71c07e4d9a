import type { LayoutName } from '../../capture/writing/captureLayouts.ts';
import { writeCapture } from '../../capture/writing/writeCapture.ts';
import type { KnownWave } from '../../signal/synthesis/knownWave.ts';
import { offsetWave } from '../../signal/synthesis/offsetWave.ts';
import { sampleWave } from '../../signal/synthesis/sampleWave.ts';
import { scaledWave } from '../../signal/synthesis/scaledWave.ts';
import { type ShapeName, type ShapeOptions, waveNamed } from '../../signal/synthesis/waveNamed.ts';
import { waveOfRms } from '../../signal/synthesis/waveOfRms.ts';
import { fittingFullScale } from './fittingFullScale.ts';
import { type StatedTruth, statedTruth } from './statedTruth.ts';

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
