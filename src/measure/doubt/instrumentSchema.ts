import * as v from 'valibot';
import { alike, optional, type Schema, size } from '../../base/schema.ts';
import type { Instrument } from './instrument.ts';

const halfWidths = alike(
  ['gainPercent', 'probePercent', 'timeBasePpm', 'distortionPercent', 'meterPercent'],
  size,
);
/** Of a meter that logs. */
const logged = [
  ...(['voltageGainPercent', 'currentGainPercent', 'powerGainPercent'] as const),
  ...(['offsetA', 'offsetW', 'clockPpm'] as const),
] as const;
const aboveZero = v.pipe(v.number(), v.finite(), v.gtValue(0));
/** They need a number above zero; the others may be zero. */
export const needAboveZero: Readonly<Record<'bits' | 'bandwidthHz' | 'meterBandwidthHz', Schema<number>>> =
  alike(['bits', 'bandwidthHz', 'meterBandwidthHz'], aboveZero);

/** A person states numbers, and no key that is not one of these. */
export const instrumentFileSchema: Schema<Partial<Instrument>> = v.strictObject(
  optional({ ...halfWidths, offsetV: size, ...alike(logged, size), ...needAboveZero }),
);

/** As data carry it: what is not known may stand as null. */
export const instrumentSchema: Schema<Partial<Instrument>> = v.looseObject(
  optional({
    ...halfWidths,
    ...alike(['offsetV', ...logged], v.nullable(size)),
    ...alike(['bits', 'bandwidthHz', 'meterBandwidthHz'], v.nullable(aboveZero)),
  }),
);
