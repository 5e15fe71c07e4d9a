import type { Notice } from '../base/notice.ts';
import { median } from '../signal/median.ts';
import { apartRatio } from '../verdict/nominal/mainsNominals.ts';
import type { BenchPoint, BenchStep, BenchTransfer } from './benchDocument.ts';
import { REACHED_SHARE } from './claims/judgePower.ts';
import type { MeasuredUnit } from './measuredUnit.ts';
import { byLoad } from './sweep/sweepEnds.ts';

/** What to doubt of a unit's bench test as a whole; the doubts of single captures stay with their results. */
export function benchNotices(test: {
  readonly points: readonly BenchPoint[];
  readonly ratedW: number | null;
  readonly unit: Pick<MeasuredUnit, 'sweep' | 'steps' | 'transfers'>;
  readonly steps: readonly BenchStep[];
  readonly transfers: readonly BenchTransfer[];
}): readonly Notice[] {
  const { points, ratedW, unit, steps, transfers } = test;
  const notices: Notice[] = [...captureDoubts(unit, points[0]?.file ?? null)];
  for (const { file, rmsV } of farFromOthers(points)) {
    const message = `${file} shows ${rmsV.toFixed(1)} V, far from the others: give its scale, the ratio of the probe.`;
    notices.push({ code: 'bench.scaleDiffers', message });
  }
  const unknown = points.filter(({ loadW }) => loadW.value === null).length;
  if (unknown > 0) {
    const message = `${unknown === 1 ? 'One capture has' : `${unknown} captures have`} no known load and no place in the sweep: give a load in W, or record the current.`;
    notices.push({ code: 'bench.loadUnknown', message });
  }
  const highest = byLoad(points).at(-1)?.loadW;
  if (ratedW !== null && highest !== undefined && highest < REACHED_SHARE * ratedW) {
    const message = `The highest load, ${Math.round(highest)} W, is below the ${ratedW} W it is rated at: full load here is no full load.`;
    notices.push({ code: 'bench.belowRating', message });
  }
  const byWords = [
    ['told', 'as told'],
    ['file name', "as the files' names tell them"],
  ].flatMap(([from, words]) => (points.some(({ loadFrom }) => loadFrom === from) ? [words] : []));
  if (byWords.length > 0 && points.length > 1) {
    const message = `Loads are ${byWords.join(' or ')}${points.some(({ loadFrom }) => loadFrom === 'measured') ? ' where no current was captured' : ''}: a heater takes less than its plate says where the voltage sags.`;
    notices.push({ code: 'bench.loadTold', message });
  }
  for (const { file, loadKind } of points) {
    if (loadKind === undefined) continue;
    const message = `${file} has ${/^[aeiou]/.test(loadKind) ? 'an' : 'a'} ${loadKind} load: it is left out of the line for the output impedance.`;
    notices.push({ code: 'bench.loadKind', message });
  }
  const missing = (
    files: readonly { readonly result: { readonly file: string } }[],
    found: readonly { readonly file: string }[],
  ) =>
    files
      .filter(({ result }) => !found.some(({ file }) => file === result.file))
      .map(({ result }) => result.file);
  for (const file of missing(unit.steps, steps)) {
    notices.push({ code: 'bench.noStep', message: `No load step was found in ${file}.` });
  }
  for (const file of missing(unit.transfers, transfers)) {
    notices.push({ code: 'bench.noTransfer', message: `No transfer was found in ${file}.` });
  }
  return notices;
}

/** Doubts of single captures that put the whole test in doubt. */
const CARRIED = /^(?:scale\.|load\.differs|nominal\.(?:off|other)|dc\.large|wave\.overRange)/;

/**
 * What a capture alone doubts of its scale and its load, once for captures that doubt the same.
 *
 * @param lightest - the capture that a unit's nominal is taken from: another outlet that a loaded one may be meant for is
 * none, as its voltage has sagged. Null: there is no sweep.
 */
function captureDoubts(
  { sweep, steps, transfers }: Pick<MeasuredUnit, 'sweep' | 'steps' | 'transfers'>,
  lightest: string | null,
): readonly Notice[] {
  const found = [...sweep, ...steps, ...transfers].flatMap(({ result }) =>
    result.notices
      .filter(({ code }) => CARRIED.test(code))
      .filter(({ code }) => code !== 'nominal.other' || lightest === null || result.file === lightest)
      .map((notice) => ({ ...notice, file: result.file })),
  );
  return [...new Set(found.map(({ code }) => code))].map((code) => {
    const [first, ...others] = found.filter((notice) => notice.code === code);
    const more = [...new Set(others.map(({ file }) => file))];
    const also = more.length === 0 ? '' : ` The same doubt of ${more.join(', ')}.`;
    return { code, message: `${first!.file}: ${first!.message}${also}` };
  });
}

/** Captures whose voltage is less than half or more than twice that of the middle one. */
function farFromOthers(
  points: readonly BenchPoint[],
): readonly { readonly file: string; readonly rmsV: number }[] {
  const measured = points.flatMap(({ file, rmsV }) =>
    rmsV.value === null ? [] : [{ file, rmsV: rmsV.value }],
  );
  if (measured.length < 2) return [];
  const middle = median(Float64Array.from(measured, ({ rmsV }) => rmsV));
  return measured.filter(({ rmsV }) => apartRatio(rmsV, middle) > 2);
}
