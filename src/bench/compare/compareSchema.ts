import * as v from 'valibot';
import { claimOutcomeSchema, kindSchema } from '../../assay/resultSchema.ts';
import { alike, digest, figure, list, notice, type Schema, text } from '../../base/schema.ts';
import type { CompareDocument, ComparedCapture } from './compareDocument.ts';

const side: Schema<ComparedCapture> = v.looseObject({
  ...{ file: text(), sha256: digest, label: v.exactOptional(text()), load: v.exactOptional(text()) },
});

const significant = v.nullable(v.boolean());

/** The document of `compare`. */
export const compareSchema: Schema<CompareDocument> = v.looseObject({
  schema: v.literal('sineassay/compare@1'),
  ...{ ...alike(['a', 'b'], side), sameInstrument: v.boolean() },
  kind: v.looseObject({ ...alike(['a', 'b'], kindSchema), significant }),
  differences: list(
    v.looseObject({
      ...alike(['key', 'quantity', 'unit'], text()),
      ...alike(['a', 'b', 'difference'], figure),
      ...{ significant, reason: v.exactOptional(text()) },
    }),
  ),
  claims: list(v.looseObject({ text: text(), ...alike(['a', 'b'], claimOutcomeSchema) })),
  notices: list(notice),
});
