/** A quantity in words, taken apart. */
export interface QuantityParts {
  /** `RMS voltage`. */
  readonly name: string;
  /** What stands in the closing brackets; empty where none. A percentage's is `%` alone. */
  readonly unit: string;
  /** What a percentage is of, unless it is the fundamental, as is usual: `of nominal`; else empty. */
  readonly base: string;
}

/**
 * Takes the unit off the end of a quantity in words.
 *
 * @param quantity - `RMS voltage (V)`, `harmonic 5 (% of fundamental)`, `crest factor`.
 */
export function quantityParts(quantity: string): QuantityParts {
  const match = /^(.*\S)\s*\(([^()]*)\)$/.exec(quantity);
  if (match === null) return { name: quantity, unit: '', base: '' };
  const unit = match[2] ?? '';
  const name = match[1] ?? quantity;
  if (!unit.startsWith('%')) return { name, unit, base: '' };
  const base = unit.slice(1).trim();
  return { name, unit: '%', base: base === 'of fundamental' ? '' : base };
}
