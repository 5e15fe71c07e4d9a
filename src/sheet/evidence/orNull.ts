/** JSON knows no NaN: null stands for "no value". */
export function orNull(value: number): number | null {
  return Number.isNaN(value) ? null : value;
}

/** The other way: NaN for null. */
export function orNan(value: number | null): number {
  return value ?? Number.NaN;
}
