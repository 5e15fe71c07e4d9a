import { cleanText } from '../text/textAccess.ts';
import { type Setting, settingValue } from './settings.ts';
import { type Unit, unitOf } from './unitOf.ts';

/** What one header cell says about its column. */
interface NameAndUnit {
  /** Cleaned; `''` where the cell holds a unit and nothing else. */
  readonly name: string;
  readonly unit: Unit | null;
}

/** Ways to write a unit behind a name: `CH1 (V)`, `CH1/V`, `CH1 in V`, `CH1: V`, `CH1V`. */
const UNIT_BEHIND: readonly RegExp[] = [
  /^(.*?)\s*[([{]([^()[\]{}]+)[)\]}]\s*$/,
  /^(.+?)\s*\/\s*([^/\s]+)$/,
  /^(.+?)\s+in\s+(\S+)$/i,
  /^(.+?)\s*[:,]\s*(\S+)$/,
  /^(ch\d+)([mk]?[va])$/i,
];

/** Behind an underscore or blank, and a name, only these are units: `time_ms`; `V_a` and `CH1 A` are names. */
const UNIT_AFTER_BLANK = /^(.{3,})[_\s]((?:[munpµμk](?:v|a|s))|s|sec|seconds?|v|volts?|amps?|hz)$/i;

/** But an `A` behind a current is no name: `Current_A`. */
const AMPERES_BEHIND = /^((?:.*[_\s])?(?:current|curr))[_\s](a)$/i;

/**
 * Splits a header cell into the channel's name and its unit.
 *
 * @example nameAndUnit('Time (ms)') // name 'Time', unit of time, factor 1e-3
 */
export function nameAndUnit(cell: string): NameAndUnit {
  const text = cleanText(cell.replace(/^[#%]+\s*/, ''));
  for (const pattern of [...UNIT_BEHIND, AMPERES_BEHIND, UNIT_AFTER_BLANK]) {
    const match = pattern.exec(text);
    const unit = match === null ? null : unitOf(match[2]!);
    if (unit !== null) return { name: match![1]!, unit };
  }
  // "Volt1", "sec": the name itself is a unit's word, numbered or not.
  const word = /^([A-Za-z]{3,}?)\s*\d*$/.exec(text);
  const unit = word === null ? unitOf(text) : unitOf(word[1]!);
  // A lone letter is a name: channels are called A, B, C and V.
  const isWord = word !== null || text.length === 2;
  return { name: text, unit: isWord && unit !== null && unit.dimension !== 'index' ? unit : null };
}

/** What a column's name alone says it carries; `silent` where it says nothing. */
type NameSays = 'time' | 'index' | 'voltage' | 'current' | 'product' | 'event' | 'frequency' | 'silent';

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

/** Where a channel stands among the table's columns, to find its share of a setting with several values. */
export interface ChannelPlace {
  /** Index among the body's columns, time included, and their number. */
  readonly columnIndex: number;
  readonly columnCount: number;
  /** Index among the columns of values, and their number. */
  readonly channelIndex: number;
  readonly channelCount: number;
  /** File columns whose settings are this channel's: from < column ≤ to. */
  readonly keysAfter: number;
  readonly keysTo: number;
  /** The channel's name in the header, lower case. */
  readonly name: string;
}

/**
 * The value that a setting has for one channel: its own where there is one value a channel or one a
 * column, the common one where there is one.
 *
 * @param key - pattern of the key without any channel's name.
 * @returns the setting cut to that one value (and a unit behind it), or null.
 */
export function channelSetting(
  settings: readonly Setting[],
  key: RegExp,
  place: ChannelPlace,
): Setting | null {
  const named = settings.find((setting) => isNamed(setting.key, key, place.name));
  if (named !== undefined) return named;
  const setting = settings.find(
    (candidate) =>
      key.test(candidate.key) && candidate.column > place.keysAfter && candidate.column <= place.keysTo,
  );
  if (setting === undefined) return null;
  const { values } = setting;
  // `Vertical Scale,50,V`: one value with its unit, however many columns there are.
  if (values.length === 2 && settingValue(setting) !== null && unitOf(values[1]!) !== null) return setting;
  if (values.length === place.channelCount) return { ...setting, values: [values[place.channelIndex]!] };
  if (values.length === place.columnCount) return { ...setting, values: [values[place.columnIndex]!] };
  return setting;
}

/** `CH1 coupling`, `coupling CH1`. */
function isNamed(settingKey: string, key: RegExp, name: string): boolean {
  if (name === '') return false;
  if (settingKey.startsWith(`${name} `)) return key.test(settingKey.slice(name.length + 1));
  return settingKey.endsWith(` ${name}`) && key.test(settingKey.slice(0, -name.length - 1));
}
