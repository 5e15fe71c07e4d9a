import type { Setting } from './setting.ts';
import { settingValue } from './settingValue.ts';
import { unitOf } from './unitOf.ts';

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
