import { cos, sin } from '../base/elementary.ts';
import type { SymmetricMatrix } from './choleskyFactor.ts';
import type { SampleTurns } from './phasors.ts';

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

/**
 * Bᵀ·W·B for the columns 1, cos kωu, sin kωu, k = 1 … K: products of cosines and sines are sums of cosines and sines of
 * orders up to 2K.
 *
 * @param sumCos - Σ w·cos mωu, m = 0 … 2K; shape 2K + 1.
 * @param sumSin - Σ w·sin mωu.
 * @returns shape 2K + 1 each way.
 */
export function harmonicGram(sumCos: Float64Array, sumSin: Float64Array, orders: number): SymmetricMatrix {
  const size = 2 * orders + 1;
  const values = new Float64Array(size * size);
  const put = (row: number, column: number, value: number): void => {
    values[row * size + column] = value;
    values[column * size + row] = value;
  };
  put(0, 0, sumCos[0]!);
  for (let j = 1; j <= orders; j++) {
    put(j, 0, sumCos[j]!);
    put(orders + j, 0, sumSin[j]!);
    for (let k = 1; k <= j; k++) {
      put(j, k, (sumCos[j - k]! + sumCos[j + k]!) / 2);
      put(orders + j, orders + k, (sumCos[j - k]! - sumCos[j + k]!) / 2);
      // sin jx · cos kx = ½ [sin(j+k)x + sin(j−k)x]
      put(orders + j, k, (sumSin[j + k]! + sumSin[j - k]!) / 2);
      put(orders + k, j, (sumSin[j + k]! - sumSin[j - k]!) / 2);
    }
  }
  return { size, values };
}
