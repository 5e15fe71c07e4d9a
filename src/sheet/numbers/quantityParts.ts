/** A quantity in words, taken apart. */
export interface QuantityParts {
  /** `RMS voltage`. */
  readonly name: string;
  /** What stands in the closing brackets, shortened for a column: `%` for `% of fundamental`; empty where none. */
  readonly unit: string;
}

/**
 * Takes the unit off the end of a quantity in words.
 *
 * @param quantity - `RMS voltage (V)`, `harmonic 5 (% of fundamental)`, `crest factor`.
 */
export function quantityParts(quantity: string): QuantityParts {
  const match = /^(.*\S)\s*\(([^()]*)\)$/.exec(quantity);
  if (match === null) return { name: quantity, unit: '' };
  const unit = match[2] ?? '';
  return { name: match[1] ?? quantity, unit: unit.startsWith('%') ? '%' : unit };
}
