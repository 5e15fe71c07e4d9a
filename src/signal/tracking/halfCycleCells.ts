import { cos } from '../../base/elementary/cos.ts';
import { sin } from '../../base/elementary/sin.ts';

/** The half cycles between zeros, each turned onto one axis and summed. */
export interface HalfCycleCells {
  /** Mean of x·cos θ, θ from 0 to π over the half cycle; shape of the zeros less one. */
  readonly re: Float64Array;
  /** Mean of −x·sin θ. */
  readonly im: Float64Array;
  /** 1 where nine tenths or more of the half cycle is present. */
  readonly whole: Uint8Array;
}

/**
 * Mean of x·e^(−iθ) over each half cycle.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param crossings - positions in samples, ascending, at least two.
 */
export function halfCycleCells(samples: Float64Array, crossings: Float64Array): HalfCycleCells {
  const count = crossings.length - 1;
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  const whole = new Uint8Array(count);
  for (let m = 0; m < count; m++) {
    const start = crossings[m]!;
    const length = crossings[m + 1]! - start;
    const from = Math.max(0, Math.ceil(start));
    const to = Math.min(samples.length, Math.ceil(start + length));
    // e^(−iθ) turned on from sample to sample: exact to some ulp over the thousand samples of a half cycle.
    const step = Math.PI / length;
    const [stepRe, stepIm] = [cos(step), -sin(step)];
    let [turnRe, turnIm] = [cos(step * (from - start)), -sin(step * (from - start))];
    let present = 0;
    for (let n = from; n < to; n++) {
      const x = samples[n]!;
      if (!Number.isNaN(x)) {
        re[m]! += x * turnRe;
        im[m]! += x * turnIm;
        present++;
      }
      const nextRe = turnRe * stepRe - turnIm * stepIm;
      turnIm = turnRe * stepIm + turnIm * stepRe;
      turnRe = nextRe;
    }
    // One sample more or less at a border is no gap.
    whole[m] = present + 1 >= 0.9 * length ? 1 : 0;
    re[m]! /= length;
    im[m]! /= length;
  }
  return { re, im, whole };
}
