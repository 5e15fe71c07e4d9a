import type { MeasureDocument, MeasureResult } from '../assay/measureDocument.ts';
import { measureSchema } from '../assay/resultSchema.ts';
import { type MeasureError, wordedError } from '../base/measureError.ts';
import { admit, type Misfit, type Schema } from '../base/schema.ts';
import type { BenchDocument, BenchUnit } from './benchDocument.ts';
import { benchSchema } from './benchSchema.ts';

/**
 * The units of a bench document written on an earlier day, to be put beside those of today.
 *
 * @param file - its name, which the units then carry.
 * @throws MeasureError `earlier.json` where it is no JSON, `earlier.schema` with its place where it is another document.
 */
export function readEarlier(text: string, file: string): readonly BenchUnit[] {
  const { units } = readDocument<BenchDocument>(text, benchSchema, (code, received) =>
    code === 'json'
      ? wordedError('earlier.json', 'The file is no JSON.', {
          expected: 'the bench.json of an earlier bench test',
          advice: adviceOfBench,
        })
      : wordedError('earlier.schema', 'The file holds no results of a bench test.', {
          expected: 'a document of the schema sineassay/bench@1',
          received,
          advice: adviceOfBench,
        }),
  );
  // What was an earlier document then is older still: only its own units count.
  return units.filter(({ earlier }) => earlier === undefined).map((unit) => ({ ...unit, earlier: file }));
}

const adviceOfBench = 'Name the file bench.json that an earlier run wrote into its folder of reports';

/**
 * The one result of a document of `measure --json`.
 *
 * @throws MeasureError `document.json`, `document.schema` with its place, `document.results` where it holds none or
 * several.
 */
export function readMeasureDocument(text: string): MeasureResult {
  const { results } = readDocument<MeasureDocument>(text, measureSchema, noSingleResult);
  const measured = results.flatMap((result) => ('capture' in result ? [result] : []));
  if (measured.length !== 1) throw noSingleResult('results', `${measured.length} results`);
  return measured[0]!;
}

function noSingleResult(code: string, received: string): MeasureError {
  return wordedError(`document.${code}`, 'The file holds no single result to compare.', {
    expected: 'a document of measure --json with one result',
    received,
    advice: 'Measure one capture with --json, or name the capture or its sheet',
  });
}

function readDocument<T>(
  text: string,
  schema: Schema<T>,
  refusal: (code: 'json' | 'schema', received: string) => MeasureError,
): T {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw refusal('json', 'text that is no JSON');
  }
  return admit(data, schema, (misfit) => refusal('schema', found(data, misfit)));
}

/** What another document calls itself; of the right one, the place that is not as its schema says. */
function found(data: unknown, { place }: Misfit): string {
  const { schema } = Object(data) as { readonly schema?: unknown };
  if (place !== '' && place !== 'schema') return `something else than expected at "${place.slice(0, 90)}"`;
  return typeof schema === 'string' ? schema : 'no schema that is known';
}
