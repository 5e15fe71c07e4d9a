import type { ReadNotice } from './notices.ts';

/** What a channel carries. `other`: a computed product, an event flag, anything that is neither. */
export type Quantity = 'voltage' | 'current' | 'other';

/** A half-open run of sample indices: from ≤ i < to. */
export interface SampleRange {
  readonly from: number;
  readonly to: number;
}

export interface Channel {
  /** As the file names it, cleaned of control characters; unique within the capture. */
  readonly name: string;
  readonly quantity: Quantity;
  /** `V` or `A` for voltage and current, else the file's own unit, `''` when it names none. */
  readonly unit: string;
  /** Probe, divider or clamp ratio already applied to `samples`; 1 when none was given. Negative: inverted. */
  readonly scale: number;
  /**
   * Shape sampleCount, in `unit` (volts or amperes, prefixes resolved), evenly spaced, in time order.
   * Finite outside `gaps`; NaN inside, so that a sum that forgets a gap shows it.
   */
  readonly samples: Float64Array;
  /** Where the file holds no value. Ascending, disjoint, none longer than the record. */
  readonly gaps: readonly SampleRange[];
  /** Smallest step between neighbouring values in `unit`, where the file states it; else null. */
  readonly stepSize: number | null;
  /** Input coupling that the file states; null or absent where it states none. AC: the mean is lost. */
  readonly coupling?: 'AC' | 'DC' | null;
  /** Probe attenuation that the file states, 10 for 10:1; not applied to `samples`. */
  readonly probeRatio?: number | null;
  /** The two channels that this one is the difference of; absent for a channel of the file's own. */
  readonly differenceOf?: readonly [plus: Channel, minus: Channel];
  /** Absent where the file shows nothing beyond the range. */
  readonly overRange?: OverRange;
  /** Vertical resolution that the file states. */
  readonly bits?: number | null;
}

/** Where the file says that the wave went beyond the instrument's range, and was cut off. */
export interface OverRange {
  /** Samples that hold a mark for that instead of a value; they stand at the rails below. */
  readonly sampleCount: number;
  /** The rails in the channel's unit; null at an end that was not passed. */
  readonly top: number | null;
  readonly bottom: number | null;
}

/** How the instrument made each sample of what its converter gave, as the file states it. */
export type Acquisition = 'sample' | 'peak detect' | 'average' | 'high resolution' | 'envelope';

/** One oscilloscope record: channels on one even time base. Checked once here; later rooms trust it. */
export interface Capture {
  /** At least one. All share the time base below. */
  readonly channels: readonly [Channel, ...Channel[]];
  readonly sampleCount: number;
  /** Time of sample 0 on the file's own axis. */
  readonly startS: number;
  /** Positive. Sample i stands at startS + i · intervalS. */
  readonly intervalS: number;
  /** What `intervalS` may be off by, each way, over itself, where coarse time stamps alone tell it; absent: nothing. */
  readonly intervalWithin?: number;
  /** The layout that was recognised, one line in words: "comma, 2 header rows, time in s, 2 channels in V". */
  readonly layout: string;
  /** Null or absent where the file doesn't say. */
  readonly acquisition?: Acquisition | null;
  readonly notices: readonly ReadNotice[];
  /** Names of channels that the notice `scale.implied` proposes a ratio for; absent: none. */
  readonly impliedScales?: readonly string[];
}

/** The runs of NaN in a channel, or of infinite values before it is settled what they mean: ascending, disjoint, half-open. */
export function gapsOf(samples: Float64Array): SampleRange[] {
  const gaps: SampleRange[] = [];
  for (let i = 0; i < samples.length; i++) {
    if (!isMissing(samples[i]!)) continue;
    const from = i;
    while (i < samples.length && isMissing(samples[i]!)) i++;
    gaps.push({ from, to: i });
  }
  return gaps;
}

/** NaN or infinite: both have no difference from themselves. */
function isMissing(value: number): boolean {
  return value - value !== 0;
}
