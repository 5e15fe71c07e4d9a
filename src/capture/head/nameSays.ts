/** What a column's name alone says it carries; `silent` where it says nothing. */
export type NameSays =
  | 'time'
  | 'index'
  | 'voltage'
  | 'current'
  | 'product'
  | 'event'
  | 'frequency'
  | 'silent';

/** In order: the first that matches decides. */
const NAME_PATTERNS: readonly (readonly [pattern: RegExp, says: NameSays])[] = [
  [/\b(event|flag|marker|status|trig|trigger|digital|alarm|segment|frame)\b|^d\d+$/, 'event'],
  // Which instrument, not what it saw.
  [
    /^(device|dev\.?|unit|instrument|board|node|port|slot|address|serial|id)( (id|no\.?|nr\.?|number|address))?$/,
    'event',
  ],
  [
    /^(time|temps|zeit|tiempo|tempo|tijd|tid|czas|cas|elapsed|timestamp|seconds?|secs?|abscissa)\b|\btime$|^(t|x|x[ _-]?axis|x[ _-]?data)$/,
    'time',
  ],
  [
    /^(index|idx|no\.?|nr\.?|#|n|samples?|sample (no\.?|number|index)|points?|sequence|seq|records?|rows?|((frame|sample|scan|cycle) )?(counter|count|cnt))$/,
    'index',
  ],
  [/^(frequency|freq\.?|f|frequenz|fréquence|frecuencia)$/, 'frequency'],
  [/\b(power|watts?|leistung|puissance|potencia|potenza)\b|^p\d*$|\*/, 'product'],
  [
    /\b(current|curr|amps?|amperes?|strom|courant|corriente|corrente|stroom|iac|iout|iin)\b|^i([abcuvwn]|l?\d+)?$|^i[ (]/,
    'current',
  ],
  [
    /\b(voltage|volts?|spannung|tension|tensión|tensione|spanning|vac|vout|vin)\b|^[uv]([abcuvwn]|l?\d+)?$|^[uv][ (]/,
    'voltage',
  ],
];

/**
 * Reads a column's name for words that decide what it carries.
 *
 * @example nameSays('I_ch1') // 'current'
 */
export function nameSays(name: string): NameSays {
  const words = name
    .toLowerCase()
    .replace(/[_\s]+/g, ' ')
    .trim();
  return NAME_PATTERNS.find(([pattern]) => pattern.test(words))?.[1] ?? 'silent';
}
