import type { MeasureDocument, MeasureResult } from '../assay/measureDocument.ts';
import { measureSchema } from '../assay/resultSchema.ts';
import { admit, type Misfit, type Schema } from '../base/schema.ts';
import type { BenchDocument, BenchUnit } from './benchDocument.ts';
import { benchError, type OtherDocument } from './benchErrors.ts';
import { benchSchema } from './benchSchema.ts';

/**
 * The units of a bench document written on an earlier day, to be put beside those of today.
 *
 * @param file - its name, which the units then carry.
 * @throws MeasureError `earlier.json` where it is no JSON, `earlier.schema` with its place where it is another document.
 */
export function readEarlier(text: string, file: string): readonly BenchUnit[] {
  const { units } = readDocument<BenchDocument>(text, benchSchema, 'earlier');
  // What was an earlier document then is older still: only its own units count.
  return units.filter(({ earlier }) => earlier === undefined).map((unit) => ({ ...unit, earlier: file }));
}

/**
 * The one result of a document of `measure --json`.
 *
 * @throws MeasureError `document.json`, `document.schema` with its place, `document.results` where it holds none or
 * several.
 */
export function readMeasureDocument(text: string): MeasureResult {
  const { results } = readDocument<MeasureDocument>(text, measureSchema, 'document');
  const measured = results.flatMap((result) => ('capture' in result ? [result] : []));
  if (measured.length !== 1) throw benchError('document.results', { results: measured.length });
  return measured[0]!;
}

function readDocument<T>(text: string, schema: Schema<T>, of: 'earlier' | 'document'): T {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw benchError(`${of}.json`, {});
  }
  return admit(data, schema, (misfit) => benchError(`${of}.schema`, { found: otherDocument(data, misfit) }));
}

function otherDocument(data: unknown, { place }: Misfit): OtherDocument {
  if (place !== '' && place !== 'schema') return { place: place.slice(0, 90) };
  const { schema } = Object(data) as { readonly schema?: unknown };
  return { schema: typeof schema === 'string' ? schema : null };
}
