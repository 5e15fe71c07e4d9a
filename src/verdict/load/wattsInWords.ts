import { parseWatts } from './parseWatts.ts';

const told = /\bno load\b|\d+(?:[.,]\d+)? ?k?W(?:atts?)?\b/gi;
/** 1,200 W is a kilowatt to some and a little more than a watt to others. */
const grouped = /\d[,.]\d{3}(?!\d)/;

/**
 * The power that the words for a load tell, in watts; null where they tell none, or more than one.
 *
 * @example wattsInWords('300 W heater') // 300
 * @example wattsInWords('no load, then 600 W') // null
 */
export function wattsInWords(words: string): number | null {
  const plain = words.replaceAll(/\s+/g, ' ').trim();
  if (/^\d+(?:[.,]\d+)?$/.test(plain) && !grouped.test(plain)) return parseWatts(plain);
  const [power, another] = plain.match(told) ?? [];
  if (power === undefined || another !== undefined || grouped.test(power)) return null;
  // Two lamps of 100 W are no 100 W: a number before the power may be how many.
  if (/\d/.test(plain.slice(0, plain.indexOf(power)))) return null;
  return parseWatts(power.replace(/atts?$/i, ''));
}
