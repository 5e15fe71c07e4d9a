import type { MeasureError } from '../../base/measureError.ts';
import type { Limit } from '../decide.ts';
import { type ClaimLack, judgeError } from '../judgeErrors.ts';
import { kindClaimedAs } from '../waveform/kinds.ts';
import type { Claim } from './claim.ts';
import { type ClaimedFigure, outletQuantities, unitQuantityIn } from './claimedQuantities.ts';

/**
 * A claim from its text: `pure sine`, `120 V ±5 %`, `230 V +6/-10 %`, `110..127 V`, `60 Hz ±0.5 Hz`,
 * `THD < 3 %`, `crest 1.38..1.45`, `transfer < 20 ms`.
 *
 * @param text - `+-` and `+/-` stand for ±; decimal point or comma; case and blanks do not matter. A bound
 * takes in its own value: `<` and `<=` mean the same to a measurement.
 * @throws MeasureError `claim.grammar` when it can't be understood, or its range holds nothing.
 * @example parseClaim('120 V ±5 %') // rmsV from 114 to 126
 */
export function parseClaim(text: string): Claim {
  const plain = normaliseClaim(text);
  if (unitQuantityIn(plain) !== undefined) throw judgeError('claim.grammar.ofUnit', { text });
  const kind = kindClaimedAs(plain.toLowerCase().replace(/ ?wave(form)?$/, ''));
  if (kind) return { text, quantity: 'waveform', kind };

  for (const quantity of keys) {
    const limit = outletQuantities[quantity].form?.(plain) ?? null;
    if (limit !== null) return { text, quantity, limit, target: null };
  }
  const named = keys.find((key) => outletQuantities[key].word?.test(plain)) ?? null;
  const word = named === null ? '' : outletQuantities[named].word!;
  const range = parseRange(plain.replace(word, '').replace(/^ ?[:=]? ?/, ''), text);
  const quantity = named ?? keys.find((key) => isToldBy(range.unit, key));
  if (quantity === undefined) throw lacking(text, 'quantity');
  const { written } = outletQuantities[quantity];
  if (range.unit !== null && range.unit !== written)
    throw lacking(text, { unit: written ?? null, not: range.unit });
  return { text, quantity, limit: range.limit, target: range.target };
}

/** One character for each sign that has several, single blanks. */
export function normaliseClaim(text: string): string {
  return text
    .normalize('NFKC')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/\+ ?\/? ?-/g, '±')
    .replace(/≤|=</g, '<=')
    .replace(/≥|=>/g, '>=')
    .replace(/\s+/g, ' ')
    .trim();
}

const keys = Object.keys(outletQuantities) as ClaimedFigure[];

function isToldBy(unit: ClaimedUnit | null, key: ClaimedFigure): boolean {
  const { isToldByUnit = false, written } = outletQuantities[key];
  return isToldByUnit && written === unit;
}

type ClaimedUnit = 'V' | 'Hz' | '%';

interface ClaimedRange {
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
  if (!alone) throw lacking(text, 'value');
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
  if (low.unit !== null && low.unit !== unit) throw lacking(text, 'one unit of ends');
  if (low.value > high.value) throw lacking(text, 'order of ends');
  return { unit, limit: { min: low.value, max: high.value }, target: null };
}

function around(target: Written, below: Written, above: Written, text: string): ClaimedRange {
  const unit = below.unit ?? above.unit;
  if (above.unit !== null && above.unit !== unit) throw lacking(text, 'one unit of tolerances');
  // A bare ±5 after volts may mean volts or percent; after a bare number only that number's own kind.
  if (unit === null && target.unit !== null) throw lacking(text, { toleranceIn: target.unit });
  if (unit !== '%' && unit !== target.unit) throw lacking(text, 'unit of value');
  if (unit === '%' && target.unit === '%') throw lacking(text, 'no percent of percent');
  const width = ({ value }: Written) => (unit === '%' ? (target.value * value) / 100 : value);
  return {
    unit: target.unit,
    limit: { min: target.value - width(below), max: target.value + width(above) },
    target: target.value,
  };
}

function lacking(text: string, lacks: ClaimLack): MeasureError {
  return judgeError('claim.grammar', { text, lacks });
}
