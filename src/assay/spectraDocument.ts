import type { Figure } from '../base/figure.ts';
import type { Reason } from '../base/notice.ts';

/** The unit that keys end in. */
type Unit = 'V' | 'A';

/** Harmonics by IEC 61000-4-7. Elements of lists hold plain numbers. */
export interface GroupsDocument<U extends Unit> {
  readonly cyclesPerWindow: number;
  readonly windowS: number;
  readonly windows: number;
  readonly lineSpacingHz: number;
  /** Which windows and aggregates the record allowed, one sentence. */
  readonly extent: string;
  /** Highest order that the factors below count to. */
  readonly highestOrder: number;
  readonly thdPercent: Figure;
  readonly thdGroupsPercent: Figure;
  readonly thdSubgroupsPercent: Figure;
  /** Absent where the record does not reach order 40. */
  readonly thdPercentTo40?: Figure;
  readonly thdGroupsPercentTo40?: Figure;
  readonly thdSubgroupsPercentTo40?: Figure;
  readonly partialWeightedPercent: number | null;
  readonly orders: readonly GroupOrder<U>[];
  /** The highest that each reaches behind the smoothing of 1.5 s. */
  readonly smoothedHighest: readonly GroupOrder<U>[] | null;
  /** Each whole 150 or 180 cycles. */
  readonly threeSeconds: readonly (readonly GroupOrder<U>[])[];
  /** One entry a window, where asked for. */
  readonly perWindow?: readonly WindowDocument<U>[];
}

type GroupOrder<U extends Unit> = { readonly order: number } & Readonly<
  Record<
    | `rms${U}`
    | `groupRms${U}`
    | `subgroupRms${U}`
    | `interharmonicGroupRms${U}`
    | `interharmonicSubgroupRms${U}`,
    number
  >
>;

/** One window of 10 or 12 cycles, plain numbers; the RMS is the fundamental's. */
type WindowDocument<U extends Unit> = {
  readonly startS: number;
  readonly thdPercent: number;
  readonly thdGroupsPercent: number;
  readonly thdSubgroupsPercent: number;
} & Readonly<Record<`fundamentalRms${U}`, number>>;

/** What lies above 2 kHz. */
export type HighBandsDocument<U extends Unit> = {
  readonly lineSpacingHz: number;
  readonly windows: number;
  readonly windowCycles: number;
  readonly bands: readonly (Readonly<Record<`rms${U}`, number>> & {
    readonly centreHz: number;
    readonly widthHz: number;
  })[];
  readonly ripple:
    | (Readonly<Record<`rms${U}`, Figure>> & {
        readonly frequencyHz: Figure;
        /** The carrier (offset 0) and its sidebands, in multiples of the fundamental; null where they can't be parted. */
        readonly lines:
          | readonly (Readonly<Record<`rms${U}`, number>> & {
              readonly offset: number;
              readonly frequencyHz: number;
            })[]
          | null;
      })
    | null;
} & Readonly<Record<`rms${U}`, Figure>>;

/** The digitiser's quality by IEEE 1057, plain numbers in the channel's unit; or why it can't be told. */
export type DigitiserDocument =
  | {
      readonly noiseAndDistortionRms: number;
      readonly noiseRms: number;
      readonly sinadDb: number | null;
      readonly idealSinadDb: number | null;
      readonly effectiveBits: number | null;
      readonly noiseBits: number | null;
      readonly bits: number | null;
      readonly bitsAssumed: boolean;
      readonly levelsUsed: number | null;
      readonly levelsAvailable: number | null;
      readonly missingCodes: number | null;
    }
  | { readonly reason: Reason };
