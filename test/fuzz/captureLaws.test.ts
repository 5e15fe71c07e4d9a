import { describe, expect, test } from 'vitest';
import type { AssayResult } from '../../src/assay/measureDocument.ts';
import { MeasureError } from '../../src/base/measureError.ts';
import { type CaptureMutant, captureMutant } from './captureMutants.ts';
import { captureMutantCount, firstMutant, mostFailures, seededRandom } from './fuzzCount.ts';
import { assaysOf, smallCaptures } from './smallCaptures.ts';

/**
 * What holds for a capture whatever was done to it: it is measured, or refused with a line; and where only the shape
 * of rows or the way of writing changed, no figure moves by more than the doubts of both without a word about it.
 *
 * Plausible data aside: a mutation of the kind `values` (a digit, sign, exponent or decimal mark changed, a number in
 * the head, rows of the middle cut out) and flipped bytes give other numbers that may be meant, which nobody can tell
 * from the truth. Of those the first law alone is held.
 */
const seed = 20_261_130;
const names = Object.keys(smallCaptures);
const encoder = new TextEncoder();
const originals = new Map(
  names.map((name) => [name, assaysOf(encoder.encode(smallCaptures[name]!)).map(({ result }) => result)]),
);

describe(`${captureMutantCount} mutants of captures`, () => {
  test('are measured or refused; no figure moves by more than its doubt without a word', () => {
    const failures: string[] = [];
    let measured = 0;
    for (let i = firstMutant; i < firstMutant + captureMutantCount; i++) {
      if (failures.length >= mostFailures) break;
      const name = names[i % names.length]!;
      const mutant = captureMutant(smallCaptures[name]!, seededRandom(seed + i));
      const wrong = faultOf(mutant, originals.get(name)!);
      if (wrong === null) measured++;
      else if (wrong !== 'refused') failures.push(`${i} (${name}; ${mutant.done.join(', ')}): ${wrong}`);
    }
    expect(failures).toEqual([]);
    // A law about nothing would hold for ever.
    expect(measured).toBeGreaterThan(captureMutantCount / 4);
  });
});

function faultOf({ bytes, kinds }: CaptureMutant, original: readonly AssayResult[]): string | null {
  let results: readonly AssayResult[];
  try {
    results = assaysOf(bytes).map(({ result }) => result);
  } catch (error) {
    if (error instanceof MeasureError) return 'refused';
    return error instanceof Error
      ? (error.stack ?? error.message).split('\n').slice(0, 3).join(' ')
      : String(error);
  }
  const endless: string[] = [];
  JSON.stringify(results, (key, value) => {
    if (typeof value === 'number' && !Number.isFinite(value)) endless.push(`${key} is ${value}`);
    return value;
  });
  if (endless.length > 0) return endless.join(', ');
  if (kinds.has('values')) return null;
  const known = new Set(original.flatMap(({ notices }) => notices.map(({ code }) => code)));
  if (results.some(({ notices }) => notices.some(({ code }) => !known.has(code)))) return null;
  const moved = results.flatMap((result, i) => movedFigures(result, original[i]));
  return moved.length === 0 ? null : `without a word ${moved.join(', ')}`;
}

const keys = ['rmsV', 'frequencyHz', 'crestFactor', 'thdPercent', 'meanV'] as const;

function movedFigures({ voltage }: AssayResult, original: AssayResult | undefined): string[] {
  if (voltage === undefined || original?.voltage === undefined) return [];
  const before = original.voltage;
  return keys.flatMap((key) => {
    const [a, b] = [before[key], voltage[key]];
    if (a.value === null || b.value === null) return [];
    // A bound is said of anything from nothing up to it.
    const doubt = Math.max(a.uncertainty, a.notAbove ?? 0) + Math.max(b.uncertainty, b.notAbove ?? 0);
    return Math.abs(a.value - b.value) <= doubt ? [] : [`${key} ${a.value} to ${b.value} ± ${b.uncertainty}`];
  });
}
