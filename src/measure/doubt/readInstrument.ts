import { type MeasureError, wordedError } from '../../base/measureError.ts';
import { admit } from '../../base/schema.ts';
import { parseYaml } from '../../read/text/parseYaml.ts';
import type { Instrument } from './instrument.ts';
import { instrumentFileSchema, needAboveZero } from './instrumentSchema.ts';

/** The keys of an instrument file, with an example each. */
const EXAMPLES: Readonly<Record<keyof Instrument, number>> = {
  bits: 8,
  gainPercent: 3,
  offsetV: 0.5,
  probePercent: 2,
  timeBasePpm: 50,
  distortionPercent: 0.3,
  bandwidthHz: 20e6,
  meterPercent: 1,
  meterBandwidthHz: 1000,
};

/**
 * What a person states of the measuring chain, from YAML: `gainPercent: 2` a line.
 *
 * @returns the keys that stand there; the rest is assumed.
 * @throws MeasureError `yaml.syntax`, `instrument.key` for a key that is not known, `instrument.value` for
 * one that is no number, or is negative; each names its line.
 */
export function readInstrument(text: string): Partial<Instrument> {
  const { data, lineOf } = parseYaml(text);
  if (data === null) return {};
  if (typeof data !== 'object' || Array.isArray(data)) {
    throw wordedError('instrument.value', 'An instrument file holds one "key: number" a line.', {
      line: 1,
      expected: 'lines such as "gainPercent: 3"',
      advice: `known keys: ${Object.keys(EXAMPLES).join(', ')}`,
    });
  }
  // Line by line, so that the first that is wrong is named.
  for (const [key, value] of Object.entries(data)) {
    admit({ [key]: value }, instrumentFileSchema, () => instrumentRefusal(key, value, lineOf([key])));
  }
  return data as Partial<Instrument>;
}

/** The error for a line that states no figure of an instrument. */
export function instrumentRefusal(key: string, value: unknown, line: number): MeasureError {
  if (!Object.hasOwn(EXAMPLES, key)) {
    return wordedError('instrument.key', `The key "${key}" is not known.`, {
      line,
      expected: `one of ${Object.keys(EXAMPLES).join(', ')}`,
      received: key,
      advice: 'check the spelling',
    });
  }
  const least = Object.hasOwn(needAboveZero, key) ? 'above zero' : 'of zero or more';
  return wordedError('instrument.value', `"${key}" needs a number ${least}.`, {
    line,
    expected: `a number such as ${EXAMPLES[key as keyof Instrument]}`,
    received: JSON.stringify(value),
    advice: 'give the half-width of the interval, as the data sheet states it, without a unit',
  });
}
