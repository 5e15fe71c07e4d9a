import * as v from 'valibot';
import { digest, list, notice, optional, type Schema, text } from '../../base/schema.ts';
import type { RecheckDocument } from '../../words/checkLines.ts';

/** The document of `recheck`. */
export const recheckSchema: Schema<RecheckDocument> = v.looseObject({
  ...{ schema: v.literal('sineassay/recheck@1'), sheet: text(), captures: list(text()) },
  carried: list(
    v.looseObject({
      ...{ ...optional({ unit: text() }), file: text(), sha256: v.nullable(digest) },
      state: v.picklist(['measured again', 'earlier', 'missing']),
    }),
  ),
  ...{ same: v.boolean(), differences: list(notice) },
});
