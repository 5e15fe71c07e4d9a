import type { WaveformKind } from '../measureDocument.ts';
import type { Claim, ClaimedFigure } from './claim.ts';
import { claimGrammarError, unitClaimError } from './claimGrammarError.ts';
import { type ClaimedUnit, parseRange } from './parseRange.ts';

const WAVES: ReadonlyMap<string, WaveformKind> = new Map([
  ['sine', 'pure sine'],
  ['pure sine', 'pure sine'],
  ['true sine', 'pure sine'],
  ['modified sine', 'modified sine'],
  ['square', 'square'],
  ['stepped', 'stepped'],
]);

/** What takes several captures, or an energy. */
const OF_A_UNIT =
  /^(?:(?:continuous |rated )?power|surge|peak power|peak (?=\d)|capacity|(?:conversion |inverter )?efficiency)\b/i;

/** How long the outlet may be without voltage when the mains go: `transfer < 20 ms`, `UPS, under 20 ms`. */
const TRANSFER =
  /^(?:UPS|EPS|transfer(?: ?time)?)[ ,:]*(?:<=?|under|below|within|up to|max(?:imum)?) ?(\d+(?:[.,]\d+)?) ?(ms|s)$/i;

/** A word that names the quantity, as it may stand before the numbers. */
const WORDS: readonly (readonly [RegExp, ClaimedFigure])[] = [
  [/^THD\b/i, 'thdPercent'],
  [/^crest(?:\s*factor)?\b/i, 'crestFactor'],
  [/^(?:(?:RMS\s+)?voltage|RMS)\b/i, 'rmsV'],
  [/^frequency\b/i, 'frequencyHz'],
];

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
  if (OF_A_UNIT.test(plain)) throw unitClaimError(text);
  const kind = WAVES.get(plain.toLowerCase().replace(/ ?wave(form)?$/, ''));
  if (kind) return { text, quantity: 'waveform', kind };

  const transfer = TRANSFER.exec(plain);
  if (transfer) {
    const value = Number(transfer[1]!.replace(',', '.'));
    const max = transfer[2]!.toLowerCase() === 'ms' ? value / 1000 : value;
    return { text, quantity: 'transferS', limit: { max }, target: null };
  }

  const [word, named] = WORDS.find(([pattern]) => pattern.test(plain)) ?? [/^/, null];
  const range = parseRange(plain.replace(word, '').replace(/^ ?[:=]? ?/, ''), text);
  const quantity = named ?? quantityOfUnit(range.unit);
  if (quantity === null) throw claimGrammarError(text, 'a unit: V or Hz, or a word: THD or crest');
  if (range.unit !== null && range.unit !== UNITS[quantity])
    throw claimGrammarError(text, `${UNITS[quantity] ?? 'no unit'} after the value, not ${range.unit}`);
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

const UNITS: Readonly<Record<ClaimedFigure, ClaimedUnit | null>> = {
  rmsV: 'V',
  frequencyHz: 'Hz',
  thdPercent: '%',
  crestFactor: null,
  transferS: null,
};

/** Percent and bare numbers can be several things: they need a word. */
function quantityOfUnit(unit: ClaimedUnit | null): ClaimedFigure | null {
  return unit === 'V' ? 'rmsV' : unit === 'Hz' ? 'frequencyHz' : null;
}
