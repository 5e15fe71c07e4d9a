import type { ReadCaptureOptions } from '../../capture/readCapture.ts';
import type { AssayOptions } from './assayOptions.ts';

/** All that a person can tell of one capture. */
export type ToldOptions = AssayOptions & ReadCaptureOptions;

/** The same where what is not told may stand as undefined, as forms and flags have it. */
export type PartlyTold = { readonly [Key in keyof ToldOptions]?: ToldOptions[Key] | undefined };

/**
 * What was told of a capture with everything else as it is by default, always in the same order: so that the sheet of
 * a capture carries the same text wherever it was told.
 */
export function completeOptions(told: PartlyTold): ToldOptions {
  return {
    claims: told.claims ?? [],
    scales: told.scales ?? [],
    inverted: told.inverted ?? [],
    rule: told.rule ?? 'guarded',
    orders: told.orders ?? 50,
    sineThdPercent: told.sineThdPercent ?? 5,
    perWindow: told.perWindow ?? false,
    ...(told.label === undefined ? {} : { label: told.label }),
    ...(told.load === undefined ? {} : { load: told.load }),
    ...(told.nominal === undefined ? {} : { nominal: told.nominal }),
    ...(told.voltage === undefined ? {} : { voltage: told.voltage }),
    ...(told.current === undefined ? {} : { current: told.current }),
    ...(told.directInput === undefined ? {} : { directInput: told.directInput }),
    ...(told.skews === undefined ? {} : { skews: told.skews }),
    ...(told.instrument === undefined ? {} : { instrument: told.instrument }),
    ...(told.sampleRateHz === undefined ? {} : { sampleRateHz: told.sampleRateHz }),
    ...(told.meter === undefined ? {} : { meter: told.meter }),
  };
}
