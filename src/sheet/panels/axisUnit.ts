/** A unit for the values along an axis. */
export interface AxisUnit {
  readonly unit: string;
  /** In the base unit. */
  readonly size: number;
}

const prefixes = [
  ['G', 1e9],
  ['M', 1e6],
  ['k', 1e3],
  ['', 1],
  ['m', 1e-3],
  ['µ', 1e-6],
] as const;

/**
 * The prefix that keeps an axis's values short: the base unit from a hundredth to ten thousand, others beyond.
 *
 * @param reach - the largest size on the axis, in the base unit.
 */
export function axisUnit(reach: number, unit: string): AxisUnit {
  if (reach >= 0.01 && reach < 1e4) return { unit, size: 1 };
  const [prefix, size] = prefixes.find(([, candidate]) => reach >= 2 * candidate) ?? ['', 1];
  return reach >= 1e12 ? { unit, size: 1 } : { unit: prefix + unit, size };
}
