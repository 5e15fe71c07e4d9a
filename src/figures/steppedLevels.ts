import { type AmplitudeLevel, amplitudeLevels, type LevelOptions } from '../signal/amplitudeLevels.ts';
import { median } from '../signal/median.ts';
import { orderStatistic } from '../signal/orderStatistic.ts';
import { edges } from './edges.ts';

export interface SteppedLevels {
  /** Ascending; empty for a smooth wave. */
  readonly levels: readonly AmplitudeLevel[];
  /** Edges between them in one cycle; 0 for a smooth wave. */
  readonly switchesPerCycle: number;
}

const SMOOTH: SteppedLevels = { levels: [], switchesPerCycle: 0 };

/**
 * The levels of a stepped wave; none where the way from one to the next takes its time (the flanks of a clipped sine
 * are empty of values too, but no edges), nor where what lies between two edges is a piece of a sine and no top.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param options - `isSineAndLine`: one line makes nearly all that the wave is beside its fundamental. On the flanks of a
 * sine it makes steps, but a staircase has many lines.
 */
export function steppedLevels(
  samples: Float64Array,
  periodSamples: number,
  options: LevelOptions & { readonly isSineAndLine: boolean },
): SteppedLevels {
  const levels = amplitudeLevels(samples, options);
  if (levels.length === 0) return SMOOTH;
  const edge = edges(samples, levels, samples.length / periodSamples);
  // Edges of real converters take up to 1 % of the period; the fastest flank of a smooth wave about 4 %.
  if (edge === null || edge.riseSamples > Math.max(1.6, 0.02 * periodSamples)) return SMOOTH;
  if (levels.length <= 3 ? !haveTops(samples, levels) : options.isSineAndLine) return SMOOTH;
  return { levels, switchesPerCycle: edge.perCycle };
}

/** Of the spacing: half of the samples of a tilted or ringing top lie nearer to its level, of half a sine farther off. */
const TOP_SPREAD = 0.14;

/** And the most of them nearer than half-way to the border: of a rest with a ramp beside it, the ramp is not. */
const MOST_OF_TOP = 0.85;

function isTop(distances: Float64Array, toBorder: number): boolean {
  return (
    median(distances) < 2 * TOP_SPREAD * toBorder &&
    orderStatistic(distances, Math.floor(MOST_OF_TOP * (distances.length - 1))) < toBorder / 2
  );
}

/** Whether the wave stays near its highest and its lowest level while it is at them. */
function haveTops(samples: Float64Array, levels: readonly AmplitudeLevel[]): boolean {
  const [lowest, highest] = [levels[0]!, levels.at(-1)!];
  const lower = (lowest.value + levels[1]!.value) / 2;
  const upper = (highest.value + levels.at(-2)!.value) / 2;
  const below = samples.filter((x) => x < lower).map((x) => Math.abs(x - lowest.value));
  const above = samples.filter((x) => x > upper).map((x) => Math.abs(x - highest.value));
  if (below.length === 0 || above.length === 0) return false;
  return isTop(below, lower - lowest.value) && isTop(above, highest.value - upper);
}
