import { type Claim, completeOptions, type ToldOptions } from '../../entry/measuring.ts';

/** What is told of a capture as one of a unit. */
export interface ToldOfUnit {
  readonly label: string;
  /** Null: as it was measured. */
  readonly load: string | null;
  /** What the capture can show of what is claimed of the unit. */
  readonly claims: readonly Claim[];
  /** As claimed of the unit. */
  readonly nominal: NonNullable<ToldOptions['nominal']>;
}

/**
 * The options of a capture as one of a unit: how it is read as told of the capture, what it is held against as told of
 * the unit. In the order and with the leavings out of a bench test, so that the sheet carries the same text.
 */
export function outletOptions(capture: ToldOptions, { label, load, ...ofUnit }: ToldOfUnit): ToldOptions {
  const { voltage, current, scales = [], nominal, instrument, inverted = [] } = capture;
  const { sampleRateHz, meter, sineThdPercent } = capture;
  return {
    ...(voltage === undefined ? {} : { voltage }),
    ...(current === undefined ? {} : { current }),
    ...(scales.length === 0 ? {} : { scales }),
    nominal: { ...ofUnit.nominal, ...nominal },
    ...(instrument === undefined ? {} : { instrument }),
    ...(inverted.length === 0 ? {} : { inverted }),
    ...(sampleRateHz === undefined ? {} : { sampleRateHz }),
    ...(meter === undefined ? {} : { meter }),
    ...(sineThdPercent === undefined || sineThdPercent === completeOptions({}).sineThdPercent
      ? {}
      : { sineThdPercent }),
    ...{ label, rule: 'guarded', claims: ofUnit.claims },
    ...(load === null ? {} : { load }),
  };
}
