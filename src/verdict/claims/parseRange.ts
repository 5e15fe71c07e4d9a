import type { Limit } from '../measureDocument.ts';
import { claimGrammarError } from './claimGrammarError.ts';

export type ClaimedUnit = 'V' | 'Hz' | '%';

export interface ClaimedRange {
  /** Of the value; null where none was written. */
  readonly unit: ClaimedUnit | null;
  /** Null for a value alone. */
  readonly limit: Limit | null;
  /** The value before a tolerance, or alone. */
  readonly target: number | null;
}

/** A number with its unit, each a group of the expressions below. */
const VALUE = String.raw`(\d+(?:[.,]\d+)?) ?(V|Hz|%)?(?: ?(?:AC|RMS))?`;
const BOUND = new RegExp(`^(?:<=?|(>=?)) ?${VALUE}$`, 'i');
const RANGE = new RegExp(String.raw`^${VALUE} ?(?:\.{2,3}|-|to) ?${VALUE}$`, 'i');
const TOLERANCE = new RegExp(`^${VALUE} ?± ?${VALUE}$`, 'i');
const UNEVEN = new RegExp(String.raw`^${VALUE} ?\+ ?${VALUE} ?[/,]? ?- ?${VALUE}$`, 'i');
const UNEVEN_BELOW_FIRST = new RegExp(String.raw`^${VALUE} ?- ?${VALUE} ?[/,]? ?\+ ?${VALUE}$`, 'i');
const ALONE = new RegExp(`^${VALUE}$`, 'i');

/**
 * The numbers of a claim: a bound, a range, a value with a tolerance (even or not), or a value alone.
 *
 * @param numbers - the claim without the word that names its quantity; `±`, `-`, `<=`, `>=` as single signs,
 * single blanks.
 * @param text - the whole claim as given, for the error.
 * @throws MeasureError `claim.grammar`.
 */
export function parseRange(numbers: string, text: string): ClaimedRange {
  const bound = BOUND.exec(numbers);
  if (bound) {
    const { value, unit } = writtenAt(bound, 2);
    return { unit, limit: bound[1] ? { min: value } : { max: value }, target: null };
  }
  const range = RANGE.exec(numbers);
  if (range) return between(writtenAt(range, 1), writtenAt(range, 3), text);
  const even = TOLERANCE.exec(numbers);
  if (even) return around(writtenAt(even, 1), writtenAt(even, 3), writtenAt(even, 3), text);
  const uneven = UNEVEN.exec(numbers);
  if (uneven) return around(writtenAt(uneven, 1), writtenAt(uneven, 5), writtenAt(uneven, 3), text);
  const belowFirst = UNEVEN_BELOW_FIRST.exec(numbers);
  if (belowFirst)
    return around(writtenAt(belowFirst, 1), writtenAt(belowFirst, 3), writtenAt(belowFirst, 5), text);
  const alone = ALONE.exec(numbers);
  if (!alone)
    throw claimGrammarError(text, 'a kind of wave, or a value with a range, a bound or a tolerance');
  const { value, unit } = writtenAt(alone, 1);
  return { unit, limit: null, target: value };
}

interface Written {
  readonly value: number;
  readonly unit: ClaimedUnit | null;
}

function writtenAt(match: RegExpExecArray, group: number): Written {
  const unit = match[group + 1]?.toUpperCase();
  return {
    value: Number(match[group]?.replace(',', '.')),
    unit: unit === 'V' || unit === '%' ? unit : unit === 'HZ' ? 'Hz' : null,
  };
}

function between(low: Written, high: Written, text: string): ClaimedRange {
  const unit = high.unit ?? low.unit;
  if (low.unit !== null && low.unit !== unit) throw claimGrammarError(text, 'one unit for both ends');
  if (low.value > high.value) throw claimGrammarError(text, 'the smaller end first');
  return { unit, limit: { min: low.value, max: high.value }, target: null };
}

function around(target: Written, below: Written, above: Written, text: string): ClaimedRange {
  const unit = below.unit ?? above.unit;
  if (above.unit !== null && above.unit !== unit)
    throw claimGrammarError(text, 'one unit for both tolerances');
  // A bare ±5 after volts may mean volts or percent; after a bare number only that number's own kind.
  if (unit === null && target.unit !== null)
    throw claimGrammarError(text, `% or ${target.unit} after the tolerance`);
  if (unit !== '%' && unit !== target.unit)
    throw claimGrammarError(text, `the same unit for value and tolerance, or %`);
  if (unit === '%' && target.unit === '%')
    throw claimGrammarError(text, 'a bound or a range: a percentage of a percentage can be read two ways');
  const width = ({ value }: Written) => (unit === '%' ? (target.value * value) / 100 : value);
  return {
    unit: target.unit,
    limit: { min: target.value - width(below), max: target.value + width(above) },
    target: target.value,
  };
}
