import type { MeasureError } from '../../base/measureError.ts';
import { admit } from '../../base/schema.ts';
import { parseYaml } from '../../read/text/parseYaml.ts';
import { measureError } from '../measureErrors.ts';
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
  voltageGainPercent: 0.5,
  currentGainPercent: 1,
  powerGainPercent: 1.5,
  offsetA: 0.02,
  offsetW: 0.2,
  clockPpm: 100,
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
    throw measureError('instrument.value.noKeys', { keys: Object.keys(EXAMPLES) }, { line: 1 });
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
    return measureError('instrument.key', { key, keys: Object.keys(EXAMPLES) }, { line });
  }
  return measureError(
    'instrument.value',
    {
      key,
      value: JSON.stringify(value),
      isAboveZero: Object.hasOwn(needAboveZero, key),
      example: EXAMPLES[key as keyof Instrument],
    },
    { line },
  );
}
