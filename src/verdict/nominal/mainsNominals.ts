/** What an outlet is meant to give; a half that is not known is absent. */
export interface ToldNominal {
  readonly voltageV?: number;
  readonly frequencyHz?: number;
}

/** Single-phase outlets of the world, as voltage and frequency: the nominals that a wave may be taken for. */
export const mainsNominals: readonly Required<ToldNominal>[] = [
  { voltageV: 100, frequencyHz: 50 },
  { voltageV: 230, frequencyHz: 50 },
  { voltageV: 100, frequencyHz: 60 },
  { voltageV: 120, frequencyHz: 60 },
  { voltageV: 240, frequencyHz: 60 },
];

/** How far a voltage may lie from a nominal and still be taken for it, by ratio. */
export const VOLTAGE_REACH = 1.2;

/**
 * How many times the larger of two positive numbers is the smaller: 1 for equals, the same both ways round.
 *
 * @example apartRatio(100, 120) // 1.2
 */
export function apartRatio(a: number, b: number): number {
  return a > b ? a / b : b / a;
}

/**
 * Whether a frequency can belong to a system of that nominal frequency: within ±15 %, which is 42.5 to
 * 57.5 Hz for 50 Hz and 51 to 69 Hz for 60 Hz.
 *
 * @remarks The ranges in which IEC 61000-4-30 measures power frequency, and the widest that EN 50160 gives
 * a system not tied to the grid (both from memory). An engine set off its speed still falls inside; a time axis
 * read in the wrong unit does not.
 */
export function isFrequencyOf(frequencyHz: number, nominalHz: number): boolean {
  return Math.abs(frequencyHz / nominalHz - 1) <= 0.15;
}
