import { noBreakSpace } from '../numbers/withUnit.ts';
import { shortText } from './shortText.ts';

/** A longer one is cut, so that the sentence around it stays readable. */
const longestLoad = 60;

const spokenUnits: Readonly<Record<string, string>> = {
  W: 'watts',
  kW: 'kilowatts',
  VA: 'volt-amperes',
  A: 'amperes',
  '%': 'percent',
};

/**
 * The load as the start of a sentence's predicate, lower case: "at 300 W resistive", "with a kettle",
 * "at an unknown load".
 *
 * @param told - the load as told; undefined where nobody told it.
 * @param spoken - spell the unit of a leading number: "at 300 watts resistive".
 */
export function loadPhrase(told: string | undefined, spoken = false): string {
  if (told === undefined || told === '') return 'at an unknown load';
  const load = shortText(told, longestLoad);
  const match = /^(\d+(?:[.,]\d+)?)\s*(kW|VA|W|A|%)(?![\p{L}\p{N}])(.*)$/u.exec(load);
  if (match !== null) {
    const [, number = '', unit = '', rest = ''] = match;
    return `at ${number}${spoken ? ` ${spokenUnits[unit]}` : `${noBreakSpace}${unit}`}${rest}`;
  }
  return /^\d|load$/i.test(load) ? `at ${load}` : `with ${load}`;
}
