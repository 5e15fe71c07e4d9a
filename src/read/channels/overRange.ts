import type { OverRange, SampleRange } from '../capture.ts';

/** Of the span of the values: so near to an extreme a value stands at the rail. */
const AT_RAIL = 0.02;
/** Samples in which a slope that goes on would reach the rail. */
const REACH_SAMPLES = 2;

/**
 * Settles what marks for "beyond the range" mean. Beside values at the rail the wave was cut off: those samples then
 * stand at the rail, as any other scope would have saved them. Marks anywhere else are missing values, and so are
 * all where most of them stand so.
 *
 * @param samples - infinite where the file has such a mark; changed in place, NaN where missing.
 * @param gaps - the runs without a finite value.
 * @returns null where nothing was cut off.
 */
export function settleOverRange(samples: Float64Array, gaps: readonly SampleRange[]): OverRange | null {
  const runs = gaps.flatMap((gap) => infiniteRuns(samples, gap));
  if (runs.length === 0) return null;
  const rails = railsOf(samples);
  const sides = runs.map((run) => sideOf(samples, run, rails));
  const length = ({ from, to }: SampleRange): number => to - from;
  const lengthOf = (picked: readonly SampleRange[]): number =>
    picked.reduce((sum, run) => sum + length(run), 0);
  const cut = runs.filter((_, k) => sides[k] !== null);
  const isCut = 2 * lengthOf(cut) > lengthOf(runs);
  runs.forEach(({ from, to }, k) => {
    const side = isCut ? sides[k]! : null;
    samples.fill(side === null ? Number.NaN : rails[side], from, to);
  });
  if (!isCut) return null;
  return {
    sampleCount: lengthOf(cut),
    top: sides.includes('top') ? rails.top : null,
    bottom: sides.includes('bottom') ? rails.bottom : null,
  };
}

type Side = 'top' | 'bottom';
type Rails = Readonly<Record<Side, number>>;

/** Runs of one infinity each within a gap, which may hold both and missing values too. */
function infiniteRuns(samples: Float64Array, gap: SampleRange): SampleRange[] {
  const runs: SampleRange[] = [];
  for (let from = gap.from; from < gap.to; ) {
    let to = from + 1;
    while (to < gap.to && samples[to] === samples[from]) to++;
    if (!Number.isNaN(samples[from]!)) runs.push({ from, to });
    from = to;
  }
  return runs;
}

function railsOf(samples: Float64Array): Rails {
  let [top, bottom] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const sample of samples) {
    if (!Number.isFinite(sample)) continue;
    if (sample > top) top = sample;
    if (sample < bottom) bottom = sample;
  }
  return { top, bottom };
}

/** The rail that the wave reaches on either side of a run; null where it reaches none. */
function sideOf(samples: Float64Array, { from, to }: SampleRange, rails: Rails): Side | null {
  const reaches = (side: Side, next: number, beyond: number): boolean => {
    const [near, far] = [samples[next] ?? Number.NaN, samples[beyond] ?? Number.NaN];
    // The record's end, or another mark: this side says nothing.
    if (!Number.isFinite(near)) return true;
    const sign = side === 'top' ? 1 : -1;
    const towards = Number.isFinite(far) ? sign * (near - far) : 0;
    const left = sign * (rails[side] - near);
    return left <= Math.max(AT_RAIL * (rails.top - rails.bottom), REACH_SAMPLES * towards);
  };
  const isReached = (side: Side): boolean =>
    reaches(side, from - 1, from - 2) && reaches(side, to, to + 1) && rails.top > rails.bottom;
  if (samples[from]! < 0) return isReached('bottom') ? 'bottom' : null;
  const beside = [samples[from - 1], samples[to]].filter((value) => Number.isFinite(value)) as number[];
  const isHigh = beside.every((value) => value >= (rails.top + rails.bottom) / 2);
  const side = isHigh ? 'top' : 'bottom';
  return isReached(side) ? side : null;
}
