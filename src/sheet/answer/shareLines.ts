/**
 * Shares lines among topics: each gets one in order of importance, then the rest goes in the same order.
 *
 * @param wanted - lines each topic would fill, most important topic first.
 * @param room - lines there are, 0 and up.
 * @returns lines granted, in the same order; their sum is not above the room.
 */
export function shareLines(wanted: readonly number[], room: number): number[] {
  let left = room;
  const granted = wanted.map((lines) => {
    const first = Math.min(lines, 1, left);
    left -= first;
    return first;
  });
  return granted.map((first, i) => {
    const more = first === 0 ? 0 : Math.min((wanted[i] ?? 0) - first, left);
    left -= more;
    return first + more;
  });
}
