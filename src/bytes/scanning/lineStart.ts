const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/**
 * Where the first line starts that starts at or behind an offset.
 *
 * @param at - 1 ≤ at ≤ bytes.length; the byte before it is looked at.
 * @returns bytes.length where none does.
 */
export function lineStart(bytes: Uint8Array, at: number): number {
  let end = at - 1;
  while (end < bytes.length && bytes[end] !== LINE_FEED && bytes[end] !== CARRIAGE_RETURN) end++;
  // A pair that ends a line is one end.
  const isPair = bytes[end] === CARRIAGE_RETURN && bytes[end + 1] === LINE_FEED;
  return Math.min(bytes.length, end + (isPair ? 2 : 1));
}
