import { hypot, wholePower } from '../../base/elementary.ts';
import type { Acquisition } from '../../read/capture.ts';
import type { HannPower } from '../../signal/hannPower.ts';
import type { HarmonicFit } from '../../signal/harmonicFit.ts';
import { LONG_RECORD } from '../../signal/recordParts.ts';
import { median } from '../../signal/statistics.ts';
import { windowLines } from '../../signal/windowLines.ts';
import { cyclesPerWindow, meanOfWindows } from '../groups/harmonicGroups.ts';
import type { MeasureNotice } from '../notices.ts';
import { BANDS_FROM_HZ, BANDS_TO_HZ, bandsOf, findRipple, type HighBand, type Ripple } from './findRipple.ts';

/** Samples a window takes at most, unless a single cycle is longer. */
const LONGEST_WINDOW = 2 ** 20;
/** The same of a long record. */
const LONG_RECORD_WINDOW = 2 ** 16;
/** Samples taken over all windows, about: a steady ripple needs no more. */
const SAMPLES_USED = 2 ** 18;

interface HighBandsInput {
  readonly intervalS: number;
  readonly fit: HarmonicFit;
  /** As `findRipple` takes it. */
  readonly residualPower?: HannPower | null;
  readonly nominalFrequencyHz: number | null;
  /** False for a wave with edges: what lies above 2 kHz are then harmonics, not ripple. */
  readonly smooth: boolean;
  /** As the file states it; null where it doesn't. */
  readonly acquisition: Acquisition | null;
}

/** What a wave holds above 2 kHz. RMS values in U. */
export interface HighBands {
  readonly bands: readonly HighBand[];
  /** Of all bands together, noise included. */
  readonly rms: number;
  /** Standard deviation that chance gives it, and what noise adds to it, in U. */
  readonly rmsDeviation: number;
  readonly rmsOfNoise: number;
  readonly windowCycles: number;
  readonly windows: number;
  readonly lineSpacingHz: number;
  /** Null where no ripple stands out, or the wave has edges. */
  readonly ripple: Ripple | null;
  readonly notices: readonly MeasureNotice[];
}

/**
 * RMS in bands from 2 kHz to half the sample rate (151 kHz at most), and the switching ripple.
 *
 * Lines come from windows of 10 or 12 measured cycles, or of as many as the record holds, averaged in power;
 * harmonics lie on lines of their own and leak into none.
 *
 * @returns null where half the sample rate does not pass 2 kHz or the record is shorter than a cycle.
 * @remarks A window is rectangular, as the standard has it: a tone half-way between two lines in the middle of a
 * band of 200 Hz leaves 1 % of its power outside it. Long fast records are read over their first quarter
 * million samples, from LONG_RECORD samples up in windows of 2¹⁶ samples at most.
 * @see IEC 61000-4-7:2002+A1:2008, annex B (from memory).
 */
export function highBands(input: HighBandsInput): HighBands | null {
  const { intervalS, fit, residualPower = null, nominalFrequencyHz, smooth, acquisition } = input;
  const frequencyHz = fit.omega / (2 * Math.PI * intervalS);
  const halfRateHz = 0.5 / intervalS;
  const periodSamples = (2 * Math.PI) / fit.omega;
  const held = Math.floor(fit.residual.length / periodSamples + 1e-6);
  if (halfRateHz <= BANDS_FROM_HZ || held < 1) return null;
  const standard = cyclesPerWindow(frequencyHz, nominalFrequencyHz).cycles;
  const isLong = fit.residual.length >= LONG_RECORD;
  const fitting = Math.max(1, Math.floor((isLong ? LONG_RECORD_WINDOW : LONGEST_WINDOW) / periodSamples));
  const most = Math.min(held, fitting);
  // At 60 Hz lines of three cycles, or a multiple, stand on the edges of the bands; at 50 Hz all do.
  const parts = standard === 12 && most > 3 ? 3 * Math.floor(most / 3) : most;
  const cycles = Math.min(standard, parts);
  const lineSpacingHz = frequencyHz / cycles;
  // Lines 0, 1, … strictly below half the sample rate.
  const below = Math.ceil((halfRateHz / lineSpacingHz) * (1 - 1e-9));
  const lines = windowLines(fit, {
    cycles,
    count: Math.min(below, Math.ceil(BANDS_TO_HZ / lineSpacingHz) + 1),
    windows: Math.max(1, Math.floor(SAMPLES_USED / (cycles * periodSamples))),
  });
  const squares = meanOfWindows(lines.map((window) => window.squares));
  const bands = bandsOf(squares, lineSpacingHz, halfRateHz, cycles);
  const fundamentalRms = hypot(fit.cosine[0]!, fit.sine[0]!) / Math.SQRT2;
  const ripple = smooth
    ? findRipple({
        residual: fit.residual,
        residualPower,
        intervalS,
        fundamentalHz: frequencyHz,
        fundamentalRms,
      })
    : null;
  return {
    bands,
    ...rmsOf(bands, squares, lineSpacingHz, lines.length),
    windowCycles: cycles,
    windows: lines.length,
    lineSpacingHz,
    ripple,
    notices: [
      ripple === null ? null : aliasNotice(ripple.frequencyHz, 1 / intervalS),
      acquisitionNotice(acquisition),
    ].filter((notice) => notice !== null),
  };
}

/** What the bands hold together, and how far noise and chance go in it. */
function rmsOf(
  bands: readonly HighBand[],
  squares: Float64Array,
  lineHz: number,
  windows: number,
): Pick<HighBands, 'rms' | 'rmsDeviation' | 'rmsOfNoise'> {
  const square = bands.reduce((sum, { rms }) => sum + rms ** 2, 0);
  const above = squares.subarray(Math.min(squares.length - 1, Math.floor(BANDS_FROM_HZ / lineHz) + 1));
  // Of n windows the mean line is of χ² with 2n degrees of freedom over 2n: median as Wilson and Hilferty have it.
  const share = windows === 1 ? Math.LN2 : wholePower(1 - 1 / (9 * windows), 3);
  // Lines and orders stand out of the noise and hardly move its median.
  const noise = Math.min(square, (above.length * median(above)) / share);
  const lineNoise = noise / above.length;
  const rms = Math.sqrt(square);
  const variance = (2 * square * lineNoise + noise * lineNoise) / windows;
  return {
    rms,
    rmsDeviation: rms > 0 ? Math.sqrt(variance) / (2 * rms) : 0,
    rmsOfNoise: rms - Math.sqrt(square - noise),
  };
}

/** Converters switch at up to about this (common practice, no source). */
const FASTEST_SWITCHING_HZ = 100_000;

/**
 * Whether a ripple may be a faster one that the sample rate folded down: always possible in principle, worth
 * saying where it lies in the top tenth below half the sample rate, or where the rate is below twice what
 * converters switch at.
 */
export function aliasNotice(rippleHz: number, sampleRateHz: number): MeasureNotice | null {
  const isNearHalf = rippleHz > 0.45 * sampleRateHz;
  if (!isNearHalf && sampleRateHz >= 2 * FASTEST_SWITCHING_HZ) return null;
  const neededHz = Math.max(2 * FASTEST_SWITCHING_HZ, 5 * sampleRateHz);
  return { code: 'ripple.alias', rippleHz, sampleRateHz, neededHz, isNearHalf };
}

/** What the scope's acquisition mode does to everything above 2 kHz; null for plain samples or where unknown. */
export function acquisitionNotice(acquisition: Acquisition | null): MeasureNotice | null {
  return acquisition === null || acquisition === 'sample' ? null : { code: 'acquisition.mode', acquisition };
}
