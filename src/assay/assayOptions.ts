import type { PartlyTold } from './options/optionLists.ts';
import { type OptionKey, options, type Told } from './options/options.ts';

/** What a person tells about a capture, and what whoever calls knows of it. Defaults are those of the catalogue. */
export interface AssayOptions extends Partial<Told> {
  /** True where nobody else reads the capture: its samples are changed in place. Default false. */
  readonly scalesInPlace?: boolean;
  /** True only for a step of a resistor from nothing to all of the rating, or back: a rule for such steps then counts. */
  readonly isResistiveFullStep?: boolean;
}

/** The file that a capture was read from, as results name it. */
export interface CaptureSource {
  readonly file: string;
  /** Of its bytes, lower-case hexadecimal. */
  readonly sha256: string;
}

/** All that a person can tell of one capture. */
export type ToldOptions = Partial<Told>;

/**
 * What was told of a capture with everything else as it is by default, always in the same order: so that the sheet of
 * a capture carries the same text wherever it was told.
 */
export function completeOptions(told: PartlyTold): ToldOptions {
  return Object.fromEntries(
    (Object.keys(options) as OptionKey[]).flatMap((key) => {
      const value = told[key] ?? options[key].otherwise;
      return value === undefined ? [] : [[key, value]];
    }),
  );
}
