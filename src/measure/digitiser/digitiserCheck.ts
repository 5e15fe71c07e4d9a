import { hypot, log2, log10 } from '../../base/elementary.ts';
import { hannPower } from '../../signal/hannPower.ts';
import type { HarmonicFit } from '../../signal/harmonicFit.ts';
import { middleStretch, type Residual } from '../../signal/residual.ts';
import type { MeasureReason } from '../reasons.ts';
import { codeCounts, missingCodes } from './codeCounts.ts';
import { digitiserAdvice } from './digitiserAdvice.ts';
import { clippedEnds, type DigitiserFigures } from './digitiserFigures.ts';

export interface DigitiserInput {
  /** Shape N; NaN marks a missing sample. */
  readonly samples: Float64Array;
  /** Between neighbouring codes, in U; null where the record shows none. */
  readonly stepSize: number | null;
  /** Of the converter; null where the file doesn't say. */
  readonly bits: number | null;
  readonly fit: HarmonicFit;
  /** False for a wave with edges. */
  readonly smooth: boolean;
  /** Of the channel; for the advice. Default V. */
  readonly unit?: 'V' | 'A';
  /** What the scope's own values were multiplied by: its knob counts in those. Default 1. */
  readonly scale?: number;
}

interface UncheckedDigitiser {
  /** Why the digitiser can't be judged from this wave. */
  readonly reason: MeasureReason;
}

/**
 * How well a digitiser served a wave: signal to noise and distortion, effective bits, levels used, missing and
 * clipped codes.
 *
 * NAD = √(Σ (x − sine)² / M), SINAD = 20·log10(A/√2 / NAD), ENOB = log2(range / (NAD·√12)), range = 2^bits·step
 *
 * @returns the reason instead where the wave is no smooth one, or one line holds a third of what the harmonics leave:
 * then that is the wave's own.
 * @remarks The standard tests a converter with a sine purer than itself. An outlet isn't one, so `effectiveBits`
 * is that of converter and wave together, and `noiseBits` says what is left once harmonics are forgiven.
 * @see IEEE Std 1057-2017; IEEE Std 1241-2010 for effective bits referred to full scale (both from memory).
 */
export function digitiserCheck(input: DigitiserInput): DigitiserFigures | UncheckedDigitiser {
  const { samples, stepSize, fit, smooth, unit = 'V', scale = 1 } = input;
  if (!smooth) {
    return { reason: { code: 'digitiser.edges' } };
  }
  if (!leavesNoise(fit.residual)) {
    return { reason: { code: 'digitiser.ownLines' } };
  }
  const noiseRms = Math.sqrt(fit.residualSquare / fit.count);
  let harmonics = 0;
  for (let k = 1; k < fit.cosine.length; k++) harmonics += (fit.cosine[k]! ** 2 + fit.sine[k]! ** 2) / 2;
  const noiseAndDistortionRms = Math.sqrt(noiseRms ** 2 + harmonics);
  const fundamentalRms = hypot(fit.cosine[0]!, fit.sine[0]!) / Math.SQRT2;

  const counts = stepSize === null ? null : codeCounts(samples, fit.residual, stepSize);
  const used = counts === null ? null : counts.observed.length;
  const bits = stepSize === null ? null : (input.bits ?? assumedBits(used));
  const fullRange = bits === null || stepSize === null ? null : 2 ** bits * stepSize;
  const bitsOf = (rms: number): number | null =>
    fullRange === null || rms === 0 ? null : log2(fullRange / (rms * Math.sqrt(12)));
  const decibels = (ratio: number): number => 20 * log10(ratio);
  const figures: DigitiserFigures = {
    noiseAndDistortionRms,
    sinadDb: noiseAndDistortionRms === 0 ? null : decibels(fundamentalRms / noiseAndDistortionRms),
    idealSinadDb: stepSize === null ? null : decibels((fundamentalRms * Math.sqrt(12)) / stepSize),
    noiseRms,
    effectiveBits: bitsOf(noiseAndDistortionRms),
    noiseBits: bitsOf(noiseRms),
    bits,
    bitsAssumed: bits !== null && input.bits === null,
    levelsUsed: used,
    levelsAvailable: bits === null ? null : 2 ** bits,
    missingCodes: counts === null || stepSize === null ? null : missingCodes(counts, noiseRms / stepSize),
    clipped: counts === null ? null : clippedEnds(counts),
    notices: [],
  };
  if (stepSize === null) return figures;
  return { ...figures, notices: digitiserAdvice(figures, stepSize / Math.abs(scale), unit) };
}

/** More levels than 256 may be those of a printed grid, which says nothing about the converter's range. */
function assumedBits(levelsUsed: number | null): 8 | null {
  return levelsUsed !== null && levelsUsed <= 256 ? 8 : null;
}

/** No single line holds a third of the residual: what rounding and noise leave is spread over many. */
function leavesNoise(residual: Residual): boolean {
  const spectrum = hannPower(middleStretch(residual, 2 ** 16), 2 ** 16);
  if (spectrum === null) return false;
  const { power } = spectrum;
  let total = 0;
  let strongest = 0;
  for (let k = 0; k < power.length; k++) {
    total += power[k]!;
    let lobe = 0;
    for (let j = Math.max(0, k - 2); j <= Math.min(power.length - 1, k + 2); j++) lobe += power[j]!;
    strongest = Math.max(strongest, lobe);
  }
  return strongest <= total / 3;
}
