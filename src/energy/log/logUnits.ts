import type { LogQuantity } from './energyLog.ts';

/** A unit that a log may name. */
export interface LogUnit {
  readonly quantity: LogQuantity;
  /** As written, tidied: `mWh`. */
  readonly symbol: string;
  /** Times this, a number is in V, A, W, Wh, Ah, VA, Hz, s, °C or percent. */
  readonly factor: number;
}

type Base = readonly [pattern: RegExp, quantity: LogQuantity, symbol: string, factor: number];

/** Units that take prefixes. */
const PREFIXED: readonly Base[] = [
  [/^(v|volts?)$/, 'voltage', 'V', 1],
  [/^(a|amps?|amp[eè]res?)$/, 'current', 'A', 1],
  [/^(w|watts?)$/, 'power', 'W', 1],
  [/^(wh|w[·*.]h|watt[- ]?h(ou)?rs?)$/, 'energy', 'Wh', 1],
  [/^(ah|a[·*.]h|amp(ere)?[- ]?h(ou)?rs?)$/, 'charge', 'Ah', 1],
  [/^(j|ws|joules?)$/, 'energy', 'J', 1 / 3600],
  [/^va$/, 'apparent power', 'VA', 1],
  [/^(hz|hertz)$/, 'frequency', 'Hz', 1],
  [/^(s|secs?|seconds?|sekunden?|secondes?|segundos?)$/, 'time', 's', 1],
];

const PLAIN: readonly Base[] = [
  [/^(min|mins|minutes?|minuten?)$/, 'time', 'min', 60],
  [/^(h|hrs?|hours?|stunden?|heures?)$/, 'time', 'h', 3600],
  [/^days?$/, 'time', 'd', 86_400],
  [/^(millis|msecs?)$/, 'time', 'ms', 1e-3],
  [/^(°c|degc|deg c|c|celsius|°f|degf|f|k)$/, 'temperature', '°C', 1],
  [/^(%|percent|pct)$/, 'other', '%', 1],
  [/^(var|kvar|db|dbm|rpm|pa|hpa|lux|lx|ohms?|mohms?|ω|mω|kg|g|€|\$|eur|usd)$/, 'other', '', 1],
];

const PREFIXES: Readonly<Record<string, readonly [symbol: string, factor: number]>> = {
  n: ['n', 1e-9],
  u: ['µ', 1e-6],
  µ: ['µ', 1e-6],
  μ: ['µ', 1e-6],
  m: ['m', 1e-3],
  k: ['k', 1e3],
};

const PREFIX_WORD = /^(nano|micro|milli|kilo)[- ]?(.+)$/;

/**
 * Reads a unit, symbol or word, with a prefix or none, in any case.
 *
 * @returns null where the text is no unit that is known here.
 * @remarks `MW` and `MAH` are read as milli, since headers are written in capitals more often than a bench has
 * megawatts; `MWh`, written as it should be, is mega.
 * @example logUnit('mWh') // energy, factor 1e-3
 */
export function logUnit(text: string): LogUnit | null {
  const token = text.trim().replace(/^[([{]\s*|\s*[)\]}.]$/g, '');
  if (token === '' || token.length > 20) return null;
  if (token === 'MWh') return { quantity: 'energy', symbol: 'MWh', factor: 1e6 };
  const lower = token.toLowerCase();
  const plain = baseOf(lower, [...PREFIXED, ...PLAIN]);
  if (plain !== null) return plain;
  const word = PREFIX_WORD.exec(lower);
  const [letter, rest] = word === null ? [lower.charAt(0), lower.slice(1)] : [prefixOf(word[1]!), word[2]!];
  const prefix = PREFIXES[letter];
  const base = prefix === undefined ? null : baseOf(rest, PREFIXED);
  if (prefix === undefined || base === null) return null;
  return { ...base, symbol: prefix[0] + base.symbol, factor: prefix[1] * base.factor };
}

function prefixOf(word: string): string {
  return word === 'micro' ? 'µ' : word.charAt(0);
}

function baseOf(text: string, bases: readonly Base[]): LogUnit | null {
  const found = bases.find(([pattern]) => pattern.test(text));
  return found === undefined ? null : { quantity: found[1], symbol: found[2] || text, factor: found[3] };
}

/** The unit that numbers of a quantity stand in so many times smaller: `mA` for a current and 10⁻³. */
export function scaledUnit(quantity: LogQuantity, factor: number): LogUnit {
  const base = { voltage: 'V', current: 'A', power: 'W', energy: 'Wh', charge: 'Ah' }[quantity as 'voltage'];
  const prefix = Object.values(PREFIXES).find((one) => one[1] === factor)?.[0] ?? '';
  return { quantity, symbol: prefix + base, factor };
}
