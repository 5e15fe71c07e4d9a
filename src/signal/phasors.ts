import { cos, sin } from '../base/elementary.ts';
import type { HarmonicSeries } from './harmonicSeries.ts';

/** e^(iωu) at the samples of a record, u in samples from its centre. */
export interface SampleTurns {
  /** Radians a sample. */
  readonly omega: number;
  /** cos ωu, shape N. */
  readonly re: Float64Array;
  /** sin ωu, shape N. */
  readonly im: Float64Array;
}

/** Samples that are turned on from one to the next before the phase is worked out anew: some 1e-15 are lost. */
const TURNED_ON = 8;

/** @param length - samples of the record, N. */
export function phasors(length: number, omega: number): SampleTurns {
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  const centre = (length - 1) / 2;
  const [stepRe, stepIm] = [cos(omega), sin(omega)];
  for (let from = 0; from < length; from += TURNED_ON) {
    const phase = omega * (from - centre);
    let [x, y] = [cos(phase), sin(phase)];
    const end = Math.min(length, from + TURNED_ON);
    for (let n = from; n < end; n++) {
      re[n] = x;
      im[n] = y;
      const next = x * stepRe - y * stepIm;
      y = x * stepIm + y * stepRe;
      x = next;
    }
  }
  return { omega, re, im };
}

/**
 * The same series, earlier by a phase: v(ωu + phaseRad) as a series in ωu. Exact for every order.
 *
 * @param phaseRad - of the fundamental; order k turns by k times as much.
 * @example advancedSeries({ mean: 0, cosine: Float64Array.of(0), sine: Float64Array.of(1) }, Math.PI / 2).cosine // 1
 */
export function timeShiftedSeries({ mean, cosine, sine }: HarmonicSeries, phaseRad: number): HarmonicSeries {
  const turned = (k: number, along: number, across: number): number =>
    along * cos((k + 1) * phaseRad) + across * sin((k + 1) * phaseRad);
  return {
    mean,
    cosine: cosine.map((c, k) => turned(k, c, sine[k]!)),
    sine: sine.map((s, k) => turned(k, s, -cosine[k]!)),
  };
}
