import * as v from 'valibot';
import { kindSchema } from '../assay/resultSchema.ts';
import { alike, count, finite, list, type Schema, size, text } from '../base/schema.ts';
import type { StatedTruth } from './synthesise.ts';

/** The truth of a made capture. */
export const truthSchema: Schema<StatedTruth> = v.looseObject({
  ...{ schema: v.literal('sineassay/truth@1'), note: text(), kind: kindSchema },
  ...alike(['frequencyHz', 'crestFactor', 'formFactor', 'thdPercent'], v.nullable(size)),
  ...alike(['rmsV', 'meanV', 'peakV', 'troughV', 'fundamentalV'], finite),
  thdOrders: count,
  harmonics: list(v.looseObject({ order: count, ...alike(['rmsV', 'percent', 'phaseDeg'], finite) })),
  record: v.looseObject({
    ...{ samples: count, bits: v.nullable(count), layout: text() },
    ...alike(['sampleRateHz', 'noiseRmsV', 'seed', 'probeRatio'], finite),
  }),
});
