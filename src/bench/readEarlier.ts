import type { MeasureResult } from '../assay/measureDocument.ts';
import { MeasureError } from '../base/measureError.ts';
import type { BenchDocument, BenchUnit } from './benchDocument.ts';

/**
 * The units of a bench document written on an earlier day, to be put beside those of today.
 *
 * @param file - its name, which the units then carry.
 * @throws MeasureError `earlier.json` where it is no JSON, `earlier.schema` where it is another document.
 */
export function readEarlier(text: string, file: string): readonly BenchUnit[] {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new MeasureError('earlier.json', 'The file is no JSON.', {
      expected: 'the bench.json of an earlier bench test',
      advice: 'Name the file bench.json that an earlier run wrote into its folder of reports',
    });
  }
  if (!isBench(data)) {
    throw new MeasureError('earlier.schema', 'The file holds no results of a bench test.', {
      expected: 'a document of the schema sineassay/bench@1',
      received: schemaOf(data),
      advice: 'Name the file bench.json that an earlier run wrote into its folder of reports',
    });
  }
  // What was an earlier document then is older still: only its own units count.
  return data.units
    .filter(({ earlier }) => earlier === undefined)
    .map((unit) => ({ ...unit, earlier: file }));
}

function schemaOf(data: unknown): string {
  const schema = isRecord(data) ? data.schema : undefined;
  return typeof schema === 'string' ? schema : 'no schema that is known';
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** As much of the shape as is read from an earlier document. */
function isBench(data: unknown): data is BenchDocument {
  return (
    isRecord(data) &&
    data.schema === 'sineassay/bench@1' &&
    Array.isArray(data.units) &&
    data.units.every(isUnit)
  );
}

const LISTS = ['points', 'claims', 'steps', 'transfers', 'energy', 'notices'] as const;

function isUnit(unit: unknown): unit is BenchUnit {
  if (!isRecord(unit) || typeof unit.name !== 'string' || typeof unit.label !== 'string') return false;
  if (!LISTS.every((key) => Array.isArray(unit[key]))) return false;
  const { regulation, droop, clipping, leavesRange, points, steps, transfers, energy } = unit;
  return (
    hasFigures(regulation, 'regulationPercent') &&
    hasFigures(droop, 'outputImpedanceOhm', 'openCircuitV', 'droopPercent') &&
    hasFigures(clipping, 'atW') &&
    hasFigures(leavesRange, 'atW') &&
    each(points, 'loadW', 'currentA', 'rmsV', 'frequencyHz', 'thdPercent', 'crestFactor') &&
    each(steps, 'deviationPercent', 'afterPercent', 'recoveryS', 'beforeV', 'afterV', 'extremeV') &&
    each(transfers, 'transferS') &&
    each(energy, 'usableSharePercent', 'outletSharePercent', 'conversionEfficiencyPercent')
  );
}

function each(items: unknown, ...keys: readonly string[]): boolean {
  return Array.isArray(items) && items.every((item) => hasFigures(item, ...keys));
}

function hasFigures(part: unknown, ...keys: readonly string[]): boolean {
  return (
    isRecord(part) &&
    keys.every((key) => {
      const figure = part[key];
      if (!isRecord(figure)) return false;
      return figure.value === null
        ? typeof figure.reason === 'string'
        : typeof figure.value === 'number' && typeof figure.uncertainty === 'number';
    })
  );
}

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
