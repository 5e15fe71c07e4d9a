import { noBreakSpace } from '../numbers/withUnit.ts';
import { shortText } from './shortText.ts';

/** A longer one is cut, so that the sentence around it stays readable. */
const longestLoad = 60;

/** Of a number of them, and before the name of a thing. */
const spokenUnits: Readonly<Record<string, readonly [string, string]>> = {
  W: ['watts', 'watt'],
  kW: ['kilowatts', 'kilowatt'],
  VA: ['volt-amperes', 'volt-ampere'],
  A: ['amperes', 'ampere'],
  '%': ['percent', 'percent'],
};

/** Words that say how a load behaves, where others name a thing: "300 W resistive", "300 W heater". */
const manner =
  /^(?:resistive|inductive|capacitive|ohmic|(?:non-?)?linear|load|total|at|of|on|with|and|plus)\b/i;

/**
 * The load as the start of a sentence's predicate, lower case: "at 300 W resistive", "with a 300 W heater", "with a kettle",
 * "at an unknown load".
 *
 * @param told - the load as told; undefined where nobody told it.
 * @param spoken - spell the unit of a leading number: "at 300 watts resistive", "with a 300 watt heater".
 */
export function loadPhrase(told: string | undefined, spoken = false): string {
  if (told === undefined || told === '') return 'at an unknown load';
  const load = shortText(told, longestLoad);
  const match = /^(\d+(?:[.,]\d+)?)\s*(kW|VA|W|A|%)(?![\p{L}\p{N}])(.*)$/u.exec(load);
  if (match === null) return /^\d|load$/i.test(load) ? `at ${load}` : `with ${load}`;
  const [, number = '', unit = '', rest = ''] = match;
  const [many, one] = spokenUnits[unit]!;
  const said = (word: string): string => `${number}${spoken ? ` ${word}` : `${noBreakSpace}${unit}`}${rest}`;
  return isOneThing(rest) && unit !== '%' ? `with ${articleOf(number)} ${said(one)}` : `at ${said(many)}`;
}

/** Whether what follows the unit is one thing's name: several end in s, but glass does not. */
function isOneThing(rest: string): boolean {
  const name = rest.trim();
  return /^\s+\p{L}/u.test(rest) && !manner.test(name) && !/[^s]s$/i.test(name);
}

/** Eight, eleven and eighteen start with a vowel, with thousands behind them too. */
function articleOf(number: string): string {
  return /^(?:8|11(?:\d{3})?(?!\d)|18(?:\d{3})?(?!\d))/.test(number) ? 'an' : 'a';
}
