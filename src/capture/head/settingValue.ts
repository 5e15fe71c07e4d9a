import { parseNumber } from '../../bytes/parseNumber.ts';
import type { Setting } from './setting.ts';
import { type Unit, unitOf } from './unitOf.ts';

export interface SettingValue {
  readonly value: number;
  /** From the value's own cell, the cell behind it, or the brackets of the key; null where none stands. */
  readonly unit: Unit | null;
}

/**
 * One value of a setting as a number with its unit: `1.00MSa/s`, `4e-6` with `s` in the next cell.
 *
 * @param index - which of the setting's values.
 * @returns null where that value is no number, as a date or `1 of 2` is none.
 */
export function settingValue(setting: Setting, index = 0): SettingValue | null {
  const match = /^([+-]?[\d.,]+(?:[eE][+-]?\d+)?)\s*([^\d]*)$/.exec(setting.values[index]?.trim() ?? '');
  if (match === null) return null;
  // A head may be written with either mark, whatever the body does.
  const value = parseNumber(match[1]!, '.') ?? parseNumber(match[1]!, ',');
  if (value === null) return null;
  const next = setting.values[index + 1] ?? '';
  const unitText = match[2]! || (unitOf(next) === null ? '' : next) || setting.keyUnit || '';
  return { value, unit: unitOf(unitText.replace(/\/(div|pt|point|sample)$/i, '')) };
}
