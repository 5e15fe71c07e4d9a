/**
 * Mean over windows of each line's square: the aggregate whose root is the root of the mean of squares. Groups
 * are sums of squares, so that groups of the aggregate are aggregates of the groups.
 *
 * @param windows - at least one, all of one shape.
 * @see IEC 61000-4-30:2015, 4.5 (from memory).
 */
export function meanOfWindows(windows: readonly Float64Array[]): Float64Array {
  const mean = new Float64Array(windows[0]!.length);
  for (const squares of windows) {
    for (let k = 0; k < mean.length; k++) mean[k]! += squares[k]! / windows.length;
  }
  return mean;
}
