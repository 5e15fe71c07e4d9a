/** One place at which two plain values differ. */
export interface ValueDifference {
  /** Keys and indices from the top: `voltage.rmsV.value`. */
  readonly path: string;
  readonly before: unknown;
  readonly after: unknown;
}

/**
 * Of what a number may differ by and still be the same: engines round the last digits of a sine or logarithm in
 * their own ways, and many sums follow. Far below the last digit that any sheet shows.
 */
const relative = 1e-9;
const absolute = 1e-9;

/**
 * Where two plain values (as JSON holds them) differ, in the order of their keys; a key that is missing is
 * undefined.
 *
 * @param ignored - paths that may differ.
 */
export function valueDifferences(
  before: unknown,
  after: unknown,
  ignored: readonly string[] = [],
): readonly ValueDifference[] {
  const found: ValueDifference[] = [];
  const compare = (a: unknown, b: unknown, path: string): void => {
    if (ignored.includes(path) || isSame(a, b)) return;
    const aRecord = asRecord(a);
    const bRecord = asRecord(b);
    if (aRecord === null || bRecord === null || Array.isArray(a) !== Array.isArray(b)) {
      found.push({ path, before: a, after: b });
      return;
    }
    for (const key of new Set([...Object.keys(aRecord), ...Object.keys(bRecord)])) {
      compare(aRecord[key], bRecord[key], path === '' ? key : `${path}.${key}`);
    }
  };
  compare(before, after, '');
  return found;
}

function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') {
    return Math.abs(a - b) <= absolute + relative * Math.max(Math.abs(a), Math.abs(b));
  }
  return a === b;
}

function asRecord(value: unknown): Record<string, unknown> | null {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : null;
}
