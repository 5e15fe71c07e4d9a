/**
 * A document section whose keys that end in `rms` end in the channel's unit instead: `groupRms` is `groupRmsV`.
 *
 * @param section - plain data.
 * @returns the same data under the new keys, all the way down, as the type that the caller names.
 */
export function keyedByUnit<T>(section: object, unit: 'V' | 'A'): T {
  const renamed = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(renamed);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, part]) => [/rms$/i.test(key) ? `${key}${unit}` : key, renamed(part)]),
    );
  };
  return renamed(section) as T;
}
