import type { Figure } from '../../base/figure.ts';
import type { BenchPoint, BenchUnit } from '../../bench/benchDocument.ts';
import { outcomeWords } from '../claimWords.ts';
import type { NamedFigure } from '../figureRows.ts';
import { significantText } from '../numbers.ts';
import { boundText, figureParts } from '../quantities.ts';
import { alignColumns } from '../text.ts';
import { pointKind, pointState } from './benchSpoken.ts';

const HEAD = ['load', 'V', 'Hz', 'THD, %', 'crest', 'kind', 'outcome'];

/** The sweep as a table, a line a capture: load, volts, hertz, THD, crest factor, kind, and how the claims stand. */
export function benchTable({ points }: Pick<BenchUnit, 'points'>): readonly string[] {
  return alignColumns([HEAD, ...points.map(cells)]);
}

function cells(point: BenchPoint): string[] {
  const { loadW, rmsV, rmsScatterV, frequencyHz, thdPercent, crestFactor, outcome } = point;
  return [
    loadW.value === null ? 'unknown' : `${significantText(loadW.value, 4)} W`,
    volts(rmsV, rmsScatterV),
    number(frequencyHz),
    number(thdPercent),
    number(crestFactor),
    pointKind(point),
    pointState(point) ?? (outcome === null ? '' : outcomeWords(outcome)),
  ];
}

/**
 * Volts to the place of what scatters from capture to capture, a tenth at the finest: rounded to their whole
 * uncertainty, most of it common to all, they would hide how they fall.
 */
function volts(figure: Figure, scatterV: number | null): string {
  if (figure.value === null || scatterV === null) return number(figure);
  return figureParts({ value: figure.value, uncertainty: Math.max(scatterV, 0.3) }).value;
}

/** A value to the place of its uncertainty, which the table leaves out for want of room. */
function number(figure: Figure): string {
  if (figure.value === null) return '–';
  if (figure.notAbove !== undefined) return `< ${boundText(figure.notAbove)}`;
  return figureParts(figure).value;
}

/** The figures of a unit over all of its loads. */
export function unitFigures({ regulation, droop, energy }: BenchUnit): NamedFigure[] {
  return [
    ['Regulation', regulation.regulationPercent, '%'],
    ['Output impedance', droop.outputImpedanceOhm, 'Ω'],
    ['Voltage at no current, by the line', droop.openCircuitV, 'V'],
    ...energy.flatMap(
      ({ usableSharePercent, outletSharePercent, conversionEfficiencyPercent }): NamedFigure[] => [
        ['Usable share', usableSharePercent, '%'],
        ['Outlet share', outletSharePercent, '%'],
        ['Conversion efficiency', conversionEfficiencyPercent, '%'],
      ],
    ),
  ];
}
