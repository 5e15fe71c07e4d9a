/**
 * The spacing of values that stand evenly, each within what printing them in decimal digits leaves.
 *
 * @param values - ascending, distinct, two or more.
 * @returns in the unit of the values; null where a place between them is empty, or one stands farther off than the
 * digits explain.
 * @remarks Levels of a staircase that a finer digitiser has rounded stand off by up to half of its step: evenly only
 * by chance where they are many.
 */
export function evenSpacing(values: Float64Array): number | null {
  const [low, high] = [values[0]!, values.at(-1)!];
  const spacing = (high - low) / (values.length - 1);
  // Half a unit at either end and at the value itself.
  const allowed = Math.max(1e-9 * (high - low), Math.min(1.01 * printedUnit(values), MOST_PRINTED * spacing));
  return values.every((value, i) => Math.abs(value - low - i * spacing) <= allowed) ? spacing : null;
}

/** Of a spacing: what printing may take of its evenness. */
const MOST_PRINTED = 0.1;

/** The largest power of ten that all values are multiples of; 0 where digits go on. */
function printedUnit(values: Float64Array): number {
  const largest = Math.max(Math.abs(values[0]!), Math.abs(values.at(-1)!));
  for (let digits = -9; digits <= 12; digits++) {
    const perUnit = Number(`1e${digits}`);
    // Twelve digits of a number are those that were printed; the rest is how a computer holds it.
    const exact = Math.max(1e-12 * largest * perUnit, 1e-9);
    if (largest * perUnit < 1) continue;
    if (exact > 0.01) return 0;
    if (values.every((value) => Math.abs(value * perUnit - Math.round(value * perUnit)) < exact))
      return 1 / perUnit;
  }
  return 0;
}
