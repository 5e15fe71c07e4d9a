import type { Assay } from '../../assay/assay.ts';
import type { Notice } from '../../base/notice.ts';
import type { BenchUnit } from '../../bench/benchDocument.ts';
import type { CarriedUnit, Evidence } from '../../draw/evidence.ts';
import type { CheckedCapture } from '../../words/checkLines.ts';
import { differenceWords } from '../../words/notices/rechecked.ts';
import { recheckBench, recheckOverlay } from './recheckBench.ts';
import { recheckCapture } from './recheckCapture.ts';

interface RecheckedCaptures {
  readonly carried: readonly CheckedCapture[];
  /** What differs, each in a sentence. */
  readonly differences: readonly Notice[];
}

/**
 * Holds what a sheet carries against its captures, measured again with the options that it carries.
 *
 * @param again - the results of each capture; at least one a capture. None: nothing is held against anything.
 */
export function recheckCaptures(evidence: Evidence, again: readonly (readonly Assay[])[]): RecheckedCaptures {
  const sha256 = new Set(again.flatMap((assays) => assays.map(({ result }) => result.sha256)));
  const carried = checkedCaptures(evidence, sha256);
  if (again.length === 0) return { carried, differences: [] };
  const missing = missingCaptures(carried);
  try {
    return { carried, differences: [...missing, ...differencesOf(evidence, again)] };
  } catch (error) {
    // Somebody's data, with whatever was done to them: what they stumble over here is theirs.
    const why = error instanceof Error ? error.message : String(error);
    return { carried, differences: [...missing, differenceWords({ code: 'data.unusable', why })] };
  }
}

function differencesOf(evidence: Evidence, again: readonly (readonly Assay[])[]): readonly Notice[] {
  switch (evidence.picture) {
    case 'overlay':
      return recheckOverlay(evidence, again);
    case 'sweep':
    case 'comparison':
      return recheckBench(
        evidence,
        again.map(([first]) => first!),
      );
    default:
      return again.flatMap((assays) => recheckCapture(evidence, assays));
  }
}

/** Of several captures, those that nobody brought: what comes of them was not held against anything. */
function missingCaptures(carried: readonly CheckedCapture[]): readonly Notice[] {
  if (carried.length < 2) return [];
  const missing = carried.filter(({ state }) => state === 'missing');
  return [...new Set(missing.map(({ unit }) => unit))].map((unit) => {
    const files = missing.filter((capture) => capture.unit === unit).map(({ file }) => file);
    return differenceWords({ code: 'capture.missing', unit, files });
  });
}

/**
 * Each capture that a sheet's figures come from, and whether it was measured again. Of a bench test they are taken
 * from the result that the sheet shows, and not only from what was told: a unit of which nothing was told is shown
 * too, and can't be measured.
 *
 * @param again - SHA-256 of the captures that were measured again.
 */
export function checkedCaptures(evidence: Evidence, again: ReadonlySet<string>): readonly CheckedCapture[] {
  const stateOf = (sha256: string): 'measured again' | 'missing' =>
    again.has(sha256) ? 'measured again' : 'missing';
  switch (evidence.picture) {
    case 'overlay':
      return evidence.sides.map(({ result: { file, sha256 } }) => ({ file, sha256, state: stateOf(sha256) }));
    case 'sweep':
      return ofUnits([evidence.result], evidence.told, again);
    case 'comparison':
      return ofUnits(evidence.result.units, evidence.told, again);
    default: {
      const { file, sha256 } = evidence.result;
      return [{ file, sha256, state: stateOf(sha256) }];
    }
  }
}

function ofUnits(
  units: readonly BenchUnit[],
  told: readonly CarriedUnit[],
  again: ReadonlySet<string>,
): readonly CheckedCapture[] {
  const names = new Set(units.flatMap(({ name, earlier }) => (earlier === undefined ? [name] : [])));
  return [
    ...units.flatMap((unit) =>
      unit.earlier === undefined
        ? ofToday(
            unit,
            told.filter(({ name }) => name === unit.name),
            again,
          )
        : shownCaptures(unit).map((capture): CheckedCapture => ({ ...capture, state: 'earlier' })),
    ),
    // Told of, and no longer in the result.
    ...told
      .filter(({ name }) => !names.has(name))
      .flatMap((unit) => toldCaptures(unit).map((capture) => withState(capture, capture.sha256, again))),
  ];
}

type Named = Omit<CheckedCapture, 'state'>;

/** What a unit's figures name; a capture of a step or transfer by its file alone. */
function shownCaptures(unit: BenchUnit): readonly Named[] {
  const { name, points, steps, transfers } = unit;
  const files = new Set(points.map(({ file }) => file));
  const others = [...new Set([...steps, ...transfers].map(({ file }) => file))].filter(
    (file) => !files.has(file),
  );
  return [
    ...points.map(({ file, sha256 }) => ({ unit: name, file, sha256 })),
    ...others.map((file) => ({ unit: name, file, sha256: null })),
  ];
}

function ofToday(
  unit: BenchUnit,
  told: readonly CarriedUnit[],
  again: ReadonlySet<string>,
): readonly CheckedCapture[] {
  const carried = told.flatMap(toldCaptures);
  const isTold = new Set(carried.map(({ sha256 }) => sha256));
  const byFile = new Map(carried.map(({ file, sha256 }) => [file, sha256]));
  const shown = shownCaptures(unit).map(({ file, sha256, ...named }) => {
    const known = sha256 ?? byFile.get(file) ?? null;
    // Without a word of how it was measured it can't be measured again, whoever has it.
    const state = known !== null && isTold.has(known) && again.has(known) ? 'measured again' : 'missing';
    return { ...named, file, sha256: known, state } as const;
  });
  const isShown = new Set(shown.map(({ sha256 }) => sha256));
  return [
    ...shown,
    ...carried
      .filter(({ sha256 }) => !isShown.has(sha256))
      .map((capture) => withState(capture, capture.sha256, again)),
  ];
}

function toldCaptures({
  name,
  sweep,
  steps,
  transfers,
}: CarriedUnit): readonly (Named & { readonly sha256: string })[] {
  return [...sweep, ...steps, ...transfers].map(({ file, sha256 }) => ({ unit: name, file, sha256 }));
}

function withState(capture: Named, sha256: string, again: ReadonlySet<string>): CheckedCapture {
  return { ...capture, state: again.has(sha256) ? 'measured again' : 'missing' };
}
