import { cleanText } from '../../bytes/cleanText.ts';
import { type Unit, unitOf } from './unitOf.ts';

/** What one header cell says about its column. */
export interface NameAndUnit {
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
