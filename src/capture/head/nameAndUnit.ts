import { cleanText } from '../../bytes/cleanText.ts';
import { type Unit, unitOf } from './unitOf.ts';

/** What one header cell says about its column. */
export interface NameAndUnit {
  /** Cleaned; `''` where the cell holds a unit and nothing else. */
  readonly name: string;
  readonly unit: Unit | null;
}

/** Ways to write a unit behind a name: `CH1 (V)`, `CH1 [V]`, `CH1/V`, `CH1 in V`, `CH1_mV`, `CH1: V`. */
const UNIT_BEHIND: readonly RegExp[] = [
  /^(.*?)\s*[([{]([^()[\]{}]+)[)\]}]\s*$/,
  /^(.+?)\s*\/\s*([^/\s]+)$/,
  /^(.+?)\s+in\s+(\S+)$/i,
  /^(.+?)\s*[:,]\s*(\S+)$/,
  /^(.+)_([^_\s]+)$/,
  /^(\S+)\s+(\S+)$/,
];

/** Behind a bare underscore or blank, and behind a name, only these are units: `V_s`, `CH1 A` are names. */
const CLEAR_UNIT = /^([munpµμk](v|a|s)|s|sec|seconds?|v|volts?|amps?|hz)$/i;

/**
 * Splits a header cell into the channel's name and its unit.
 *
 * @example nameAndUnit('Time (ms)') // name 'Time', unit of time, factor 1e-3
 */
export function nameAndUnit(cell: string): NameAndUnit {
  const text = cleanText(cell.replace(/^[#%]+\s*/, ''));
  for (const [k, pattern] of UNIT_BEHIND.entries()) {
    const match = pattern.exec(text);
    if (match === null) continue;
    const unit = unitOf(match[2]!);
    const isClear = k < 4 || (match[1]!.length > 2 && CLEAR_UNIT.test(match[2]!));
    if (unit !== null && isClear) return { name: match[1]!, unit };
  }
  // "Volt1", "sec": the name itself is a unit's word, numbered or not.
  const word = /^([A-Za-z]{3,}?)\s*\d*$/.exec(text);
  const unit = word === null ? unitOf(text) : unitOf(word[1]!);
  // A lone letter is a name: channels are called A, B, C and V.
  const isWord = word !== null || text.length === 2;
  return { name: text, unit: isWord && unit !== null && unit.dimension !== 'index' ? unit : null };
}
