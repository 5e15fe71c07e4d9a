import { cos } from '../base/elementary/cos.ts';
import { sin } from '../base/elementary/sin.ts';
import type { SymmetricMatrix } from './choleskyFactor.ts';
import { harmonicGram } from './harmonicGram.ts';
import type { SampleTurns } from './sampleTurns.ts';

/**
 * Bᵀ·B and Bᵀ·y for the columns 1, cos kωu, sin kωu. Products of cosines and sines are sums of cosines and
 * sines of orders up to 2K, so 2K + 1 running sums give the whole matrix.
 */
export function normalEquations(
  samples: Float64Array,
  turns: SampleTurns,
  orders: number,
): { gram: SymmetricMatrix; right: Float64Array; count: number } {
  const { omega } = turns;
  const right = projections(samples, turns, orders);
  const sumCos = new Float64Array(2 * orders + 1);
  const sumSin = new Float64Array(2 * orders + 1);
  let count = samples.length;
  fullRecordSums(samples.length, omega, sumCos);
  const centre = (samples.length - 1) / 2;
  for (let n = 0; n < samples.length; n++) {
    if (!Number.isNaN(samples[n]!)) continue;
    count--;
    for (let m = 0; m < sumCos.length; m++) {
      sumCos[m]! -= cos(m * omega * (n - centre));
      sumSin[m]! -= sin(m * omega * (n - centre));
    }
  }
  return { gram: harmonicGram(sumCos, sumSin, orders), right, count };
}

/** Σ cos(mωu) over a full record centred on u = 0: the Dirichlet kernel sin(Nmω/2)/sin(mω/2). Sines cancel. */
function fullRecordSums(length: number, omega: number, sumCos: Float64Array): void {
  for (let m = 0; m < sumCos.length; m++) {
    const half = (m * omega) / 2;
    const below = sin(half);
    sumCos[m] = Math.abs(below) < 1e-9 ? length : sin(length * half) / below;
  }
}

/** Bᵀ·y: Σ y, Σ y·cos kωu, Σ y·sin kωu over the present samples. */
export function projections(samples: Float64Array, turns: SampleTurns, orders: number): Float64Array {
  const sums = new Float64Array(2 * orders + 1);
  for (let n = 0; n < samples.length; n++) {
    const y = samples[n]!;
    if (Number.isNaN(y)) continue;
    const stepRe = turns.re[n]!;
    const stepIm = turns.im[n]!;
    let re = stepRe;
    let im = stepIm;
    sums[0]! += y;
    for (let k = 1; k <= orders; k++) {
      sums[k]! += y * re;
      sums[orders + k]! += y * im;
      const nextRe = re * stepRe - im * stepIm;
      im = re * stepIm + im * stepRe;
      re = nextRe;
    }
  }
  return sums;
}
