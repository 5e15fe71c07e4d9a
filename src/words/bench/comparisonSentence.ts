import { hypot } from '../../base/elementary.ts';
import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { BenchPoint, BenchUnit } from '../../bench/benchDocument.ts';
import { sweepEnds } from '../../bench/sweep/regulation.ts';
import { decimalText, withUnit } from '../numbers.ts';
import { figureParts } from '../quantities.ts';
import { capitalised, shortText } from '../text.ts';
import { benchSpoken } from './benchSpoken.ts';
import { leadingLoss, overloadPhrase } from './overloadWords.ts';

/**
 * How the units compare in a sentence: which of them lost their output, then whose voltage moves least and who
 * distorts least. A difference smaller than the uncertainties is said to be none; units that were not loaded alike, or
 * whose waves are of different kinds, are not ranked, and it is said why.
 */
export function comparisonSentence(units: readonly BenchUnit[]): string {
  const [first] = units;
  if (first === undefined) return 'No unit was measured.';
  if (units.length === 1) return benchSpoken(first)[0];
  const lost = units.flatMap((unit) => {
    const loss = leadingLoss(unit);
    return loss === null ? [] : [`${named(unit)}: ${overloadPhrase(loss)}`];
  });
  const why = apart(units);
  const rank = why.length === 0 ? ranking(units) : `the units can’t be ranked: ${why.join('; ')}`;
  return [...lost, capitalised(rank)].map((sentence) => `${sentence}.`).join(' ');
}

/** Loads this near are one load: heaters come in sizes. Common practice, no source. */
const SAME_LOAD_RATIO = 1.1;

/** Why units can't be ranked: other loads, a voltage that falls with one and rises with another, other waves. */
function apart(units: readonly BenchUnit[]): readonly string[] {
  const full = units.flatMap((unit) => {
    const ends = sweepEnds(unit.points);
    return 'reason' in ends ? [] : [{ unit, ...ends.fullLoad, change: unit.regulation.regulationPercent }];
  });
  if (full.length < 2) return [];
  const list = (of: (one: (typeof full)[number]) => string): string =>
    full.map((one) => `${shortText(one.unit.name, 24)} ${of(one)}`).join(', ');
  const loads = full.map(({ loadW }) => loadW);
  const isApart = Math.max(...loads) > SAME_LOAD_RATIO * Math.min(...loads);
  const signs = new Set(full.map(({ change }) => signOf(change)).filter((sign) => sign !== 0));
  const kinds = new Set(full.map(({ point }) => point.kind));
  return [
    ...(isApart
      ? [`their full loads differ (${list(({ loadW }) => withUnit(decimalText(loadW, 0), 'W'))})`]
      : []),
    ...(signs.size > 1
      ? [`not all voltages fall (${list(({ change }) => (signOf(change) < 0 ? 'rises' : 'falls'))})`]
      : []),
    ...(kinds.size > 1 ? [`their waves differ in kind (${list(({ point }) => point.kind)})`] : []),
  ];
}

/** Of a change that is larger than its uncertainty; else 0. */
function signOf(figure: Figure): number {
  if (figure.value === null || Math.abs(figure.value) <= figure.uncertainty) return 0;
  return Math.sign(figure.value);
}

function ranking(units: readonly BenchUnit[]): string {
  const steadiest = least(units, ({ regulation }) => regulation.regulationPercent);
  const purest = least(units, (unit) => thdAt(unit, 'fullLoad'));
  if (steadiest?.isSure === true && purest?.isSure === true && steadiest.unit === purest.unit) {
    return `${purest.named} holds its voltage best (it moves by ${steadiest.value} with load) and distorts least at full load (${purest.value})`;
  }
  const holds =
    steadiest === null
      ? 'regulation can’t be compared'
      : steadiest.isSure
        ? `the voltage of ${steadiest.named} moves least with load (${steadiest.value})`
        : 'no unit surely holds its voltage best';
  const distorts =
    purest === null
      ? 'distortion at full load can’t be compared'
      : purest.isSure
        ? `${purest.named} distorts least at full load (${purest.value})`
        : 'none surely distorts least at full load';
  return `${holds}; ${distorts}`;
}

/** The unit whose figure is smallest in size; null where fewer than two have one. */
function least(
  units: readonly BenchUnit[],
  of: (unit: BenchUnit) => Figure,
): {
  readonly unit: BenchUnit;
  readonly named: string;
  readonly value: string;
  readonly isSure: boolean;
} | null {
  const measured = units.flatMap((unit) => {
    const figure = of(unit);
    return figure.value === null ? [] : [{ unit, figure }];
  });
  const [best, second] = measured.sort((a, b) => Math.abs(a.figure.value) - Math.abs(b.figure.value));
  if (best === undefined || second === undefined) return null;
  const between = Math.abs(second.figure.value) - Math.abs(best.figure.value);
  const size = { ...best.figure, value: Math.abs(best.figure.value) };
  return {
    unit: best.unit,
    named: named(best.unit),
    value: withUnit(figureParts(size).value, '%'),
    isSure: between > hypot(best.figure.uncertainty, second.figure.uncertainty),
  };
}

function named({ label }: BenchUnit): string {
  return shortText(label, 36);
}

type SweepEnd = 'noLoad' | 'fullLoad';

/** The capture at one end of a unit's sweep; null where there is none. */
export function endPoint({ points }: BenchUnit, end: SweepEnd): BenchPoint | null {
  const ends = sweepEnds(points);
  return 'reason' in ends ? null : ends[end].point;
}

/** THD at one end of a unit's sweep. */
export function thdAt(unit: BenchUnit, end: SweepEnd): Figure {
  const ends = sweepEnds(unit.points);
  return 'reason' in ends ? { value: null, reason: ends.reason } : ends[end].point.thdPercent;
}

/** RMS voltage at one end, as its deviation from nominal in %; null where either is not known. */
export function deviationAt(unit: BenchUnit, end: SweepEnd): MeasuredFigure | null {
  const nominalV = unit.nominal?.voltageV;
  const rmsV = endPoint(unit, end)?.rmsV;
  if (nominalV === undefined || rmsV === undefined || rmsV.value === null) return null;
  return {
    value: 100 * (rmsV.value / nominalV - 1),
    uncertainty: (100 * rmsV.uncertainty) / nominalV,
  };
}
