import { cos } from '../base/elementary/cos.ts';
import { sin } from '../base/elementary/sin.ts';

/**
 * cos and −sin of 2πk/N in turn, k = 0 … N − 1, from the first eighth of the turn and its mirror images.
 *
 * @param table - filled; shape 2N, N a power of two ≥ 4.
 */
export function fillFourierTable(table: Float64Array): void {
  const size = table.length / 2;
  const put = (k: number, cosine: number, sine: number): void => {
    table[2 * k] = cosine;
    table[2 * k + 1] = -sine;
  };
  for (let k = 0; k <= size / 8; k++) {
    const c = cos((2 * Math.PI * k) / size);
    const s = sin((2 * Math.PI * k) / size);
    put(k, c, s);
    put(size / 4 - k, s, c);
    put(size / 4 + k, -s, c);
    put(size / 2 - k, -c, s);
    put(size / 2 + k, -c, -s);
    put((3 * size) / 4 - k, -s, -c);
    put((3 * size) / 4 + k, s, -c);
    if (k > 0) put(size - k, c, -s);
  }
}
