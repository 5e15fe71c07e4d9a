import * as v from 'valibot';
import { fields } from '../../entry/grammar.ts';
import type { Schema } from '../../entry/measuring.ts';
import { nothingTold, type Told } from '../told/told.ts';

/** A sitting as a file: every capture whole, compressed, and what was told of it. */
export interface SittingDocument {
  readonly schema: 'sineassay/sitting@1';
  readonly captures: readonly {
    readonly file: string;
    readonly told: Told;
    /** The file's bytes, gzip, base64. */
    readonly gzip: string;
  }[];
}

const text = v.string();
const told = Object.fromEntries(
  fields
    .filter(({ option }) => option !== 'instrument')
    .map(({ name, kind }) =>
      kind === 'check' ? [name, v.fallback(v.boolean(), false)] : [name, v.fallback(text, '')],
    ),
);
const instrument = Object.fromEntries(
  fields
    .filter(({ option }) => option === 'instrument')
    .map(({ name }) => [name, v.fallback(v.optional(text), undefined)]),
);

/** What was told counts as far as it is of the right kind, for a file may have been edited; the rest was not told. */
export const sittingSchema: Schema<SittingDocument> = v.object({
  schema: v.literal('sineassay/sitting@1'),
  captures: v.array(
    v.object({
      ...{ file: text, gzip: text },
      told: v.fallback(
        v.object({ ...told, instrument: v.fallback(v.object(instrument), {}) }) as unknown as Schema<Told>,
        nothingTold,
      ),
    }),
  ),
});
