import { atan2 } from '../../base/elementary/atan2.ts';
import { hypot } from '../../base/elementary/hypot.ts';
import type { SampleRange } from '../../capture/capture.ts';
import { fitHarmonics } from '../../signal/fitHarmonics.ts';

/** The wave on one side of a break, carried on as if nothing had happened. */
export interface SteadySide {
  readonly periodSamples: number;
  /** Of the fundamental's sine at a position in samples, radians, not wrapped. */
  phaseRadAt(position: number): number;
  /** Standard deviation of that phase: it grows with the distance from the stretch. */
  phaseDeviationRadAt(position: number): number;
  /**
   * Lowest and highest value that the wave takes near n (JITTER_CYCLES or a sample), from the same
   * place in up to three cycles of this side; null where all of them are missing.
   */
  rangeAt(n: number): readonly [low: number, high: number] | null;
}

/** Cycles of a side that are looked at. */
const CYCLES = 5;
/** Orders that keep a stepped wave's frequency true over a few cycles. */
const ORDERS = 15;
/** How far an edge may stand from where it stood some cycles before; the frequency of few cycles is no better. */
const JITTER_CYCLES = 0.003;

/**
 * The steady wave of a stretch beside a break.
 *
 * @param range - the whole stretch; its few cycles nearest the break are used.
 * @param nearEnd - true where the break follows the stretch, false where it comes before.
 * @param omega - rough, radians a sample.
 * @returns null where the stretch holds under 1.3 cycles or shows no such wave.
 */
export function steadySide(
  samples: Float64Array,
  range: SampleRange,
  nearEnd: boolean,
  omega: number,
): SteadySide | null {
  const length = Math.min(range.to - range.from, Math.floor((CYCLES * 2 * Math.PI) / omega));
  if (length * omega < 1.3 * 2 * Math.PI) return null;
  const from = nearEnd ? range.to - length : range.from;
  const to = from + length;
  // Two unknowns an order: a stretch of few samples a cycle holds fewer.
  const orders = Math.max(1, Math.min(ORDERS, Math.floor((0.8 * Math.PI) / omega)));
  const stretch = samples.subarray(from, to);
  const fit = fitHarmonics(stretch, { orders, omega }) ?? fitHarmonics(stretch, { orders: 1, omega });
  if (fit === null) return null;
  const centre = from + (length - 1) / 2;
  const phase = atan2(fit.cosine[0]!, fit.sine[0]!);
  const amplitude = hypot(fit.cosine[0]!, fit.sine[0]!);
  // A stretch without a wave fits anything.
  if (!(amplitude > fit.residualDeviation)) return null;
  const phaseDeviation = Math.max(fit.deviation.cosine[0]!, fit.deviation.sine[0]!) / amplitude;
  const periodSamples = (2 * Math.PI) / fit.omega;
  return {
    periodSamples,
    phaseRadAt: (position) => fit.omega * (position - centre) + phase,
    phaseDeviationRadAt: (position) => hypot(phaseDeviation, fit.deviation.omega * (position - centre)),
    rangeAt(n) {
      const near = Math.max(1, JITTER_CYCLES * periodSamples);
      const values = [-1, -0.5, 0, 0.5, 1].map((by) =>
        repeatedMean(samples, { from, to }, n + by * near, periodSamples),
      );
      const present = values.filter((value) => value !== null);
      return present.length === 0 ? null : [Math.min(...present), Math.max(...present)];
    },
  };
}

/** Mean of a periodic stretch at the places whole periods from n, the three nearest to n; null where missing. */
function repeatedMean(
  samples: Float64Array,
  { from, to }: SampleRange,
  n: number,
  periodSamples: number,
): number | null {
  const direction = n >= to - 1 ? -1 : 1;
  const outside = Math.max(0, n - (to - 2), from - n);
  const first = Math.ceil(outside / periodSamples);
  let [sum, count] = [0, 0];
  for (let k = first; k < first + 3; k++) {
    const position = n + direction * k * periodSamples;
    const i = Math.floor(position);
    if (i < from || i + 1 >= to) continue;
    const value = samples[i]! + (position - i) * (samples[i + 1]! - samples[i]!);
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return count === 0 ? null : sum / count;
}
