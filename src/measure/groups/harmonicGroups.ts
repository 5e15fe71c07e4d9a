import { exp } from '../../base/elementary.ts';
import type { HarmonicFit } from '../../signal/harmonicFit.ts';
import { windowLines } from '../../signal/windowLines.ts';
import type { MeasureNotice } from '../notices.ts';
import {
  type GroupFigures,
  type GroupValues,
  groupDistortion,
  type OrderGroups,
  orderGroups,
  partialWeightedDistortion,
} from './groupFigures.ts';

/** Windows of the aggregate of 150 or 180 cycles, about 3 s. */
const WINDOWS_OF_3_S = 15;

/** Error of a window's length that the standard lets pass (from memory). */
const SYNCHRONISATION = 3e-4;

interface GroupInput {
  readonly intervalS: number;
  readonly fit: HarmonicFit;
  /** Of the wave, as told or inferred; null where neither. */
  readonly nominalFrequencyHz: number | null;
}

/**
 * Harmonic groups, subgroups and interharmonics by the method of IEC 61000-4-7, in windows tied to the measured
 * fundamental.
 *
 * @returns null where the record holds no whole window of 10 or 12 cycles, or too few samples for order 2.
 * @remarks Groups take in the noise of their lines, 2σ²/L each (L samples a window), and whatever modulates the
 * wave; the harmonics of the fit don't. The THD here is that of windows, the fit's that of the whole record.
 * @see IEC 61000-4-7:2002+A1:2008; IEC 61000-4-30:2015 for the aggregation (both from memory).
 */
export function harmonicGroups({ intervalS, fit, nominalFrequencyHz }: GroupInput): GroupFigures | null {
  const frequencyHz = fit.omega / (2 * Math.PI * intervalS);
  const { cycles, provided } = cyclesPerWindow(frequencyHz, nominalFrequencyHz);
  // The lines up to the next order must stay below half the sample rate.
  const highest = Math.min(50, Math.floor(Math.PI / fit.omega - 1));
  if (highest < 2) return null;
  const lines = windowLines(fit, { cycles, count: cycles * (highest + 1) });
  if (lines.length === 0) return null;
  const squares = lines.map((window) => window.squares);
  const values = (windows: readonly Float64Array[]): GroupValues =>
    groupValues(meanOfWindows(windows), cycles, highest);
  const windows = squares.map((window) => values([window]));
  const windowS = cycles / frequencyHz;
  const aggregates = Math.floor(lines.length / WINDOWS_OF_3_S);
  return {
    cyclesPerWindow: cycles,
    windowS,
    lineSpacingHz: frequencyHz / cycles,
    windows,
    all: values(squares),
    threeSeconds: Array.from({ length: aggregates }, (_, i) =>
      values(squares.slice(i * WINDOWS_OF_3_S, (i + 1) * WINDOWS_OF_3_S)),
    ),
    smoothedHighest: aggregates === 0 ? null : highestSmoothed(windows, windowS),
    extent: extent(cycles, lines.length, aggregates),
    notices: [
      provided ? null : rangeNotice(cycles, frequencyHz),
      synchronisationNotice(
        lines.map((window) => window.fundamentalPhaseRad),
        cycles,
      ),
    ].filter((notice) => notice !== null),
  };
}

function groupValues(squares: Float64Array, cycles: number, highest: number): GroupValues {
  const orders = orderGroups(squares, cycles, highest);
  const reached = [40, 50].filter((order) => order <= highest);
  return {
    orders,
    distortion: (reached.length > 0 ? reached : [highest]).map((order) => groupDistortion(orders, order)),
    partialWeightedRatio: partialWeightedDistortion(orders),
  };
}

function highestSmoothed(windows: readonly GroupValues[], windowS: number): readonly OrderGroups[] {
  return windows[0]!.orders.map(({ order }, i) => {
    const highest = (of: (groups: OrderGroups) => number): number =>
      Math.max(
        ...smoothed(
          windows.map(({ orders }) => of(orders[i]!)),
          windowS,
        ),
      );
    return {
      order,
      rms: highest(({ rms }) => rms),
      groupRms: highest(({ groupRms }) => groupRms),
      subgroupRms: highest(({ subgroupRms }) => subgroupRms),
      interharmonicGroupRms: highest(({ interharmonicGroupRms }) => interharmonicGroupRms),
      interharmonicSubgroupRms: highest(({ interharmonicSubgroupRms }) => interharmonicSubgroupRms),
    };
  });
}

function extent(cycles: number, windows: number, aggregates: number): string {
  const count = windows === 1 ? 'One window' : `${windows} windows`;
  const long = cycles * WINDOWS_OF_3_S;
  if (aggregates === 0) {
    return `${count} of ${cycles} cycles: too short for a value over ${long} cycles (3 s).`;
  }
  const values = aggregates === 1 ? 'one value' : `${aggregates} values`;
  return `${count} of ${cycles} cycles: ${values} over ${long} cycles (3 s); no 10-minute value.`;
}

function rangeNotice(cycles: number, frequencyHz: number): MeasureNotice {
  return { code: 'groups.frequency', frequencyHz, cycles };
}

/** The fundamental's phase runs away from the fit's: its frequency isn't the same in all windows. */
function synchronisationNotice(phases: readonly number[], cycles: number): MeasureNotice | null {
  let worst = 0;
  for (let i = 1; i < phases.length; i++) {
    const turn = phases[i]! - phases[i - 1]!;
    const wrapped = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
    worst = Math.max(worst, Math.abs(wrapped) / (2 * Math.PI * cycles));
  }
  return worst <= SYNCHRONISATION ? null : { code: 'groups.unsynchronised', movesPercent: 100 * worst };
}

/** Which window a wave is measured in, and whether the standard provides for its frequency. */
interface CyclesPerWindow {
  readonly cycles: 10 | 12;
  /** False outside 42.5 to 69 Hz, where no standard says how many cycles to take. */
  readonly provided: boolean;
}

/**
 * Cycles of a window of about 200 ms: 10 in systems of 50 Hz, 12 in systems of 60 Hz.
 *
 * @param frequencyHz - as measured, > 0. It decides, at 55 Hz.
 * @param nominalFrequencyHz - decides where it is 50 or 60 Hz and the frequency lies in that system's range,
 * 42.5 to 57.5 Hz or 51 to 69 Hz.
 * @see IEC 61000-4-7:2002+A1:2008, 4.4.1; ranges of IEC 61000-4-30:2015, 5.1 (both from memory).
 */
export function cyclesPerWindow(frequencyHz: number, nominalFrequencyHz: number | null): CyclesPerWindow {
  const within50 = frequencyHz >= 42.5 && frequencyHz <= 57.5;
  const within60 = frequencyHz >= 51 && frequencyHz <= 69;
  const provided = within50 || within60;
  if (nominalFrequencyHz === 50 && within50) return { cycles: 10, provided };
  if (nominalFrequencyHz === 60 && within60) return { cycles: 12, provided };
  return { cycles: frequencyHz < 55 ? 10 : 12, provided };
}

/**
 * Mean over windows of each line's square: the aggregate whose root is the root of the mean of squares. Groups
 * are sums of squares, so that groups of the aggregate are aggregates of the groups.
 *
 * @param windows - at least one, all of one shape.
 * @see IEC 61000-4-30:2015, 4.5 (from memory).
 */
export function meanOfWindows(windows: readonly Float64Array[]): Float64Array {
  const mean = new Float64Array(windows[0]!.length);
  for (const squares of windows) {
    for (let k = 0; k < mean.length; k++) mean[k]! += squares[k]! / windows.length;
  }
  return mean;
}

/** Time constant of the smoothing, s. */
const TIME_CONSTANT_S = 1.5;

/**
 * First-order low-pass of window values: y[n] = (x[n] + β·y[n−1]) / α, α = 1 / (1 − exp(−T / 1.5 s)), β = α − 1.
 *
 * @param values - one a window, in order. Not changed.
 * @param windowS - T, > 0.
 * @returns same shape. It starts from the first value as if that had stood for ever.
 * @see IEC 61000-4-7:2002+A1:2008, 5.5.1 (from memory). It prints α and β to three or four digits (8.012 and
 * 7.012 for 200 ms); these come from the time constant.
 * @example smoothed([0, 8.011], 0.2) // [0, 1.000]
 */
export function smoothed(values: readonly number[], windowS: number): number[] {
  const alpha = 1 / (1 - exp(-windowS / TIME_CONSTANT_S));
  let last = values[0] ?? 0;
  return values.map((value) => {
    last = (value + (alpha - 1) * last) / alpha;
    return last;
  });
}
