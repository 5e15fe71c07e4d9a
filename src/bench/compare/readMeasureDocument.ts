import { MeasureError } from '../../base/measureError.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';

/**
 * The one result of a document of `measure --json`.
 *
 * @throws MeasureError `document.json`, `document.schema`, `document.results` where it holds none or several.
 */
export function readMeasureDocument(text: string): MeasureResult {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw wrong('document.json', 'text that is no JSON');
  }
  const { schema, results } = (data ?? {}) as Record<string, unknown>;
  if (schema !== 'sineassay/measure@1' || !Array.isArray(results)) {
    throw wrong('document.schema', typeof schema === 'string' ? schema : 'no schema that is known');
  }
  const measured = results.filter(isResult);
  if (measured.length !== 1) throw wrong('document.results', `${measured.length} results`);
  return measured[0]!;
}

/** The outline that a comparison needs. */
function isResult(result: unknown): result is MeasureResult {
  if (typeof result !== 'object' || result === null) return false;
  const { file, sha256, capture, waveform, claims } = result as Record<string, unknown>;
  const isRecord = (part: unknown): boolean => typeof part === 'object' && part !== null;
  return (
    typeof file === 'string' &&
    typeof sha256 === 'string' &&
    isRecord(capture) &&
    isRecord(waveform) &&
    Array.isArray(claims)
  );
}

function wrong(code: string, received: string): MeasureError {
  return new MeasureError(code, 'The file holds no single result to compare.', {
    expected: 'a document of measure --json with one result',
    received,
    advice: 'Measure one capture with --json, or name the capture or its sheet',
  });
}
