/** What a unit measures. `counts`: bare codes of a converter; `index`: numbers of samples. */
export type Dimension =
  | 'time'
  | 'voltage'
  | 'current'
  | 'frequency'
  | 'level'
  | 'product'
  | 'counts'
  | 'index'
  | 'rate'
  | 'other';

export interface Unit {
  readonly dimension: Dimension;
  /** The unit without its prefix: `V`, `A`, `s`, `Hz`; the file's own text for any other. */
  readonly symbol: string;
  /** Times this, a number is in `symbol`. */
  readonly factor: number;
}

const PREFIX_FACTORS: Readonly<Record<string, number>> = {
  '': 1,
  p: 1e-12,
  n: 1e-9,
  u: 1e-6,
  µ: 1e-6,
  μ: 1e-6,
  m: 1e-3,
  k: 1e3,
  K: 1e3,
  M: 1e6,
  G: 1e9,
};

const BASE_UNITS: readonly (readonly [pattern: RegExp, dimension: Dimension, symbol: string])[] = [
  [/^(s|sec|secs|second|seconds|sekunden?|secondes?|segundos?)$/, 'time', 's'],
  [/^(v|volt|volts)$/, 'voltage', 'V'],
  [/^(a|amp|amps|ampere|amperes|ampère|ampères)$/, 'current', 'A'],
  [/^(hz|hertz)$/, 'frequency', 'Hz'],
  [/^(sa\/s|s\/s|sps|samples\/s|samples\/sec|samples\/second|sa)$/, 'rate', 'Hz'],
  [/^(w|watt|watts|va|var|v\*a|v·a|vv|v\*v|v²|v\^2|a²|a\^2|v²s|wh|j)$/, 'product', ''],
  [/^db.*$/, 'level', ''],
  [/^(count|counts|cnt|cnts|adc|adc counts?|lsb|code|codes|raw|digits?|levels?)$/, 'counts', 'counts'],
  [/^(sequence|samples?|points?|pts|index|#|nr|no)$/, 'index', ''],
  [/^(%|percent|deg|degree|°|rad|°c|degc|k|ohm|ohms|ω|rpm|nm|pa|bar|c|f)$/, 'other', ''],
];

const PREFIX_WORDS: Readonly<Record<string, string>> = {
  pico: 'p',
  nano: 'n',
  micro: 'µ',
  milli: 'm',
  kilo: 'k',
  mega: 'M',
  giga: 'G',
};

/**
 * Reads a unit: symbol or word, prefix or none, in any case that is not ambiguous.
 *
 * @returns null where the text is no unit that is known here.
 * @remarks Capital `MS`, `US`, `MV`, `MA` are read as milli and micro: no scope saves megavolts, but many
 * write their header in capitals.
 * @example unitOf('microseconds') // time, 's', 1e-6
 */
export function unitOf(text: string): Unit | null {
  const token = text
    .trim()
    .replace(/^[([{]\s*|\s*[)\]}]$/g, '')
    .replace(/^in\s+/i, '');
  return withoutPrefix(token) ?? withPrefixWord(token) ?? withPrefix(token);
}

function withoutPrefix(token: string): Unit | null {
  const lower = token.toLowerCase();
  const found = BASE_UNITS.find(([pattern]) => pattern.test(lower));
  return found === undefined ? null : { dimension: found[1], symbol: found[2] || token, factor: 1 };
}

function withPrefixWord(token: string): Unit | null {
  const match = /^(pico|nano|micro|milli|kilo|mega|giga)[\s-]?(.+)$/i.exec(token);
  if (match === null) return null;
  return scaled(match[2]!, PREFIX_FACTORS[PREFIX_WORDS[match[1]!.toLowerCase()]!]!);
}

function withPrefix(token: string): Unit | null {
  const prefix = token.charAt(0);
  const isShouted = token === token.toUpperCase() && /^[MUNP]/.test(prefix) && /^.(S|SEC|V|A)$/.test(token);
  const factor = PREFIX_FACTORS[isShouted ? prefix.toLowerCase() : prefix];
  return factor === undefined || token.length < 2 ? null : scaled(token.slice(1), factor);
}

/** Prefixes stand before the units that take one, never before counts, levels or other units. */
function scaled(base: string, factor: number): Unit | null {
  const unit = withoutPrefix(base);
  if (unit === null || ['counts', 'index', 'level', 'other'].includes(unit.dimension)) return null;
  return unit.dimension === 'product' ? { ...unit, symbol: base, factor } : { ...unit, factor };
}
