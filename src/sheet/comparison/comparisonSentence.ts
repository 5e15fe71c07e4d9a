import { hypot } from '../../base/elementary/hypot.ts';
import type { Figure } from '../../base/figure.ts';
import type { BenchUnit } from '../../bench/benchDocument.ts';
import { benchSpoken } from '../answer/bench/benchSpoken.ts';
import { capitalised } from '../answer/capitalised.ts';
import { shortText } from '../answer/shortText.ts';
import { figureParts } from '../numbers/figureParts.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { thdAt } from './unitEnds.ts';

/**
 * How the units compare in one sentence: whose voltage moves least, who distorts least. A difference smaller than
 * the uncertainties is said to be none.
 */
export function comparisonSentence(units: readonly BenchUnit[]): string {
  const [first] = units;
  if (first === undefined) return 'No unit was measured.';
  if (units.length === 1) return benchSpoken(first)[0];
  const steadiest = least(units, ({ regulation }) => regulation.regulationPercent);
  const purest = least(units, (unit) => thdAt(unit, 'fullLoad'));
  if (steadiest?.isSure === true && purest?.isSure === true && steadiest.unit === purest.unit) {
    return `${purest.named} holds its voltage best (it moves by ${steadiest.value} with load) and distorts least at full load (${purest.value}).`;
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
  return capitalised(`${holds}; ${distorts}.`);
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
  const apart = Math.abs(second.figure.value) - Math.abs(best.figure.value);
  const size = { ...best.figure, value: Math.abs(best.figure.value) };
  return {
    unit: best.unit,
    named: shortText(best.unit.label, 36),
    value: withUnit(figureParts(size).value, '%'),
    isSure: apart > hypot(best.figure.uncertainty, second.figure.uncertainty),
  };
}
