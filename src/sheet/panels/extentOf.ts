/** Smallest and largest finite value of several arrays together; [−1, 1] where there is none. */
export function extentOf(...arrays: readonly Float64Array[]): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const array of arrays) {
    for (const value of array) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return low <= high ? [low, high] : [-1, 1];
}
