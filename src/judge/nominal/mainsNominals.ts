import type { MeasureError } from '../../base/measureError.ts';
import { judgeError } from '../judgeErrors.ts';

/** What an outlet is meant to give; a half that is not known is absent. */
export interface ToldNominal {
  readonly voltageV?: number;
  readonly frequencyHz?: number;
  /** True where it was taken from another capture of the same unit: it stands as told, but other outlets stay possible. */
  readonly ofUnit?: boolean;
}

/** One outlet of the world. */
export type Outlet = Required<Pick<ToldNominal, 'voltageV' | 'frequencyHz'>>;

/** Whether nothing of it is left to be inferred. */
export function isWholeNominal(told: ToldNominal): told is ToldNominal & Outlet {
  return told.voltageV !== undefined && told.frequencyHz !== undefined;
}

/** Classes of outlet that tables of limits are written for. */
export const mainsNominals: readonly Outlet[] = [
  { voltageV: 100, frequencyHz: 50 },
  { voltageV: 230, frequencyHz: 50 },
  { voltageV: 100, frequencyHz: 60 },
  { voltageV: 120, frequencyHz: 60 },
  { voltageV: 240, frequencyHz: 60 },
];

/** Outlets that a wave is taken for first, up to ±10 %: what IEC 60038 lets a supply be off. */
export const USUAL_OUTLETS: readonly Outlet[] = [
  { voltageV: 230, frequencyHz: 50 },
  { voltageV: 120, frequencyHz: 60 },
  { voltageV: 240, frequencyHz: 60 },
];
export const USUAL_REACH = 0.1;

/** Outlets that a wave is taken for where none of the usual fits, up to ±5 %. */
export const OTHER_OUTLETS: readonly Outlet[] = [
  { voltageV: 100, frequencyHz: 50 },
  { voltageV: 100, frequencyHz: 60 },
  { voltageV: 200, frequencyHz: 60 },
  { voltageV: 208, frequencyHz: 60 },
  { voltageV: 277, frequencyHz: 60 },
];
export const OTHER_REACH = 0.05;

/** Outlets that lie too near others to be told from the wave; within ±3 % they are named. */
export const TOLD_OUTLETS: readonly Outlet[] = [
  ...[110, 115, 127, 220].flatMap((voltageV) => [50, 60].map((frequencyHz) => ({ voltageV, frequencyHz }))),
  { voltageV: 200, frequencyHz: 50 },
];
export const TOLD_REACH = 0.03;

/** Farther than this by ratio from each class of outlet, the volts themselves are doubted. */
export const VOLTAGE_REACH = 1.2;

/**
 * How many times the larger of two positive numbers is the smaller: 1 for equals, the same both ways round.
 *
 * @example apartRatio(100, 120) // 1.2
 */
export function apartRatio(a: number, b: number): number {
  return a > b ? a / b : b / a;
}

/** Whether a value lies within a share of a nominal one, the edge included. @param share - 0.1 for ±10 %. */
export function isWithin(value: number, nominal: number, share: number): boolean {
  // An edge such as 1.1 · 230 may land a rounding beside its decimal.
  return Math.abs(value - nominal) <= share * nominal * (1 + 1e-12);
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

export interface Nominal {
  readonly voltageV: number;
  readonly frequencyHz: number;
  /** False where it was told by option, claim or plan. */
  readonly inferred: boolean;
}

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)\s*`;
const VOLT = String.raw`V(?:\s*AC)?\s*`;
const BOTH = new RegExp(`^${NUMBER}(?:${VOLT}/?|/)\\s*${NUMBER}(?:Hz)?$`, 'i');
const VOLTAGE_ALONE = new RegExp(`^${NUMBER}${VOLT}/?$`, 'i');
const FREQUENCY_ALONE = new RegExp(`^/?\\s*${NUMBER}Hz$`, 'i');

/**
 * The nominal voltage and frequency from text: `120V/60Hz`, `230 V 50 Hz`, `120/60`, or one half with its
 * unit. Decimal point or comma.
 *
 * @throws MeasureError `nominal.grammar` when the text is anything else, or a number in it is zero.
 * @example parseNominal('120V') // { voltageV: 120 }
 */
export function parseNominal(text: string): ToldNominal {
  const trimmed = text.trim();
  const both = BOTH.exec(trimmed);
  if (both) return { voltageV: positive(both[1], text), frequencyHz: positive(both[2], text) };
  const voltage = VOLTAGE_ALONE.exec(trimmed);
  if (voltage) return { voltageV: positive(voltage[1], text) };
  const frequency = FREQUENCY_ALONE.exec(trimmed);
  if (frequency) return { frequencyHz: positive(frequency[1], text) };
  throw grammarError(text);
}

function positive(digits: string | undefined, text: string): number {
  const value = Number(digits?.replace(',', '.'));
  if (!(value > 0)) throw grammarError(text);
  return value;
}

function grammarError(text: string): MeasureError {
  return judgeError('nominal.grammar', { text });
}
