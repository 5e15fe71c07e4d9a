import type { outletClaims } from '../../entry/benching.ts';
import { completeOptions, type ToldOptions } from '../../entry/measuring.ts';

/** What is told of a capture as one of a unit. */
export interface ToldOfUnit {
  readonly label: string;
  /** Null: as it was measured. */
  readonly load: string | null;
  readonly claims: ReturnType<typeof outletClaims>;
}

/**
 * The options of a capture as one of a unit: how it is read as told of the capture, what it is held against as told of
 * the unit. In the order and with the leavings out of a bench test, so that the sheet carries the same text.
 */
export function outletOptions(capture: ToldOptions, { label, load, claims }: ToldOfUnit): ToldOptions {
  const { voltage, current, scales = [], nominal, instrument, inverted = [] } = capture;
  const { sampleRateHz, meter, sineThdPercent } = capture;
  return {
    ...(voltage === undefined ? {} : { voltage }),
    ...(current === undefined ? {} : { current }),
    ...(scales.length === 0 ? {} : { scales }),
    nominal: { ...claims.nominal, ...nominal },
    ...(instrument === undefined ? {} : { instrument }),
    ...(inverted.length === 0 ? {} : { inverted }),
    ...(sampleRateHz === undefined ? {} : { sampleRateHz }),
    ...(meter === undefined ? {} : { meter }),
    ...(sineThdPercent === undefined || sineThdPercent === completeOptions({}).sineThdPercent
      ? {}
      : { sineThdPercent }),
    ...{ label, rule: 'guarded', claims: claims.sweep },
    ...(load === null ? {} : { load }),
  };
}
