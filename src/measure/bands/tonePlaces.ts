import { median } from '../../signal/statistics.ts';

/** The standard's windows of 200 ms have a line every 5 Hz: there each line's own place decides. */
const STANDARD_LINE_HZ = 5;
/** Over the middle line, in power: the lines of noise look like a tone by chance, and stay where they are. */
const PROMINENT = 25;
/** Of the power of four lines: with no more left over, one tone is all that they show. */
const LEFT_OVER = 0.01;

/**
 * The frequencies of single tones among lines that lie too far apart to tell a band by their own places.
 *
 * A window is rectangular: a tone of amplitude A, a part δ of the spacing above line k, shows A·sinc(δ + j) in line k − j,
 * so that the two lines beside it tell δ, and those next to them whether one tone is all there is.
 *
 * @param squares - squared RMS of line k at k·lineHz, averaged over windows.
 * @returns for each line the frequency of the tone that it is of, Hz; NaN where it is of none, and everywhere where lines
 * lie as close as the standard's.
 */
export function tonePlaces(squares: Float64Array, lineHz: number): Float64Array {
  const places = new Float64Array(squares.length).fill(Number.NaN);
  if (lineHz < 1.5 * STANDARD_LINE_HZ) return places;
  const least = PROMINENT * median(squares);
  for (let k = 2; k + 2 < squares.length; k++) {
    if (!(squares[k]! > least) || squares[k]! < squares[k - 1]! || squares[k]! <= squares[k + 1]!) continue;
    const lower = squares[k - 1]! > squares[k + 1]! ? k - 1 : k;
    const [a, b] = [Math.sqrt(squares[lower]!), Math.sqrt(squares[lower + 1]!)];
    const part = b / (a + b);
    const before = Math.sqrt(squares[lower - 1]!) - (a * part) / (1 + part);
    const after = Math.sqrt(squares[lower + 2]!) - (b * (1 - part)) / (2 - part);
    if (before ** 2 + after ** 2 > LEFT_OVER * (a * a + b * b)) continue;
    places.fill((lower + part) * lineHz, lower - 1, lower + 3);
  }
  return places;
}
