import type { SymmetricMatrix } from './choleskyFactor.ts';

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
