import { cos } from '../base/elementary/cos.ts';
import { sin } from '../base/elementary/sin.ts';

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
export function sampleTurns(length: number, omega: number): SampleTurns {
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
