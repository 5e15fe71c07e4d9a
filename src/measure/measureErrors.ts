import { type ErrorMaker, makeError } from '../base/measureError.ts';
import type { NoFacts, Reason } from '../base/notice.ts';

/** Why a capture can't be measured, or what is wrong with what was told of the instruments. */
export interface MeasureErrors {
  'wave.noPeriod': Stretch & { readonly min: number; readonly max: number; readonly cycles: number | null };
  'wave.noPeriod.fewSamples': { readonly samples: number };
  /** @property cycles - of the wave that the record seems to hold; null: less than one. */
  'wave.tooShort': Stretch & { readonly cycles: number | null };
  'wave.tooCoarse': Stretch & { readonly intervalS: number };
  'power.tooShort': { readonly periods: number; readonly least: number };
  'power.noSamples': NoFacts;
  /** @property mostS - half a period. */
  'power.skewTooLong': { readonly skewS: number; readonly mostS: number };
  'instrument.key': { readonly key: string; readonly keys: readonly string[] };
  /** @property value - as JSON has it. */
  'instrument.value': {
    readonly key: string;
    readonly value: string;
    readonly isAboveZero: boolean;
    readonly example: number;
  };
  'instrument.value.noKeys': { readonly keys: readonly string[] };
  'meter.reading': { readonly readingV: number };
  /** @property reason - why the file has no such figure; null: it is zero. */
  'meter.incomparable': { readonly reason: Reason | null };
}

/** What was looked at. */
interface Stretch {
  /** The longest part of the record that no gap breaks, and not all of it. */
  readonly isBetweenGaps: boolean;
  readonly lengthS: number;
}

export const measureError: ErrorMaker<MeasureErrors> = makeError;
