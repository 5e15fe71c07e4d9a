import type { Figure } from '../base/figure.ts';
import type { ComparisonRow, UnitResult } from './benchDocument.ts';
import { type BenchReason, lacking } from './reasons.ts';
import { sweepEnds } from './sweep/regulation.ts';

type Compared = Omit<ComparisonRow, 'figures'> & { readonly of: (unit: UnitResult) => Figure };

const COMPARED: readonly Compared[] = [
  {
    quantity: 'noLoadV',
    name: 'voltage without load',
    unit: 'V',
    of: (unit) => atEnd(unit, 'noLoad', 'rmsV'),
  },
  {
    quantity: 'fullLoadV',
    name: 'voltage at full load',
    unit: 'V',
    of: (unit) => atEnd(unit, 'fullLoad', 'rmsV'),
  },
  {
    quantity: 'regulationPercent',
    name: 'regulation, no load to full load',
    unit: '%',
    of: ({ regulation }) => regulation.regulationPercent,
  },
  {
    quantity: 'outputImpedanceOhm',
    name: 'output impedance',
    unit: 'Ω',
    of: ({ droop }) => droop.outputImpedanceOhm,
  },
  {
    quantity: 'frequencyHz',
    name: 'frequency at full load',
    unit: 'Hz',
    of: (unit) => atEnd(unit, 'fullLoad', 'frequencyHz'),
  },
  {
    quantity: 'thdPercent',
    name: 'THD at full load',
    unit: '%',
    of: (unit) => atEnd(unit, 'fullLoad', 'thdPercent'),
  },
  {
    quantity: 'crestFactor',
    name: 'crest factor at full load',
    unit: '',
    of: (unit) => atEnd(unit, 'fullLoad', 'crestFactor'),
  },
  { quantity: 'clippingW', name: 'tops flatten from', unit: 'W', of: ({ clipping }) => clipping.atW },
  {
    quantity: 'leavesRangeW',
    name: 'leaves its range at',
    unit: 'W',
    of: ({ leavesRange }) => leavesRange.atW,
  },
  {
    quantity: 'stepDeviationPercent',
    name: 'largest deviation at a load step',
    unit: '%',
    of: ({ steps }) =>
      largest(
        steps.map(({ deviationPercent }) => deviationPercent),
        { code: 'step.none' },
      ),
  },
  {
    quantity: 'transferS',
    name: 'longest transfer',
    unit: 's',
    of: ({ transfers }) =>
      largest(
        transfers.map(({ transferS }) => transferS),
        { code: 'transfer.none' },
      ),
  },
  {
    quantity: 'usableSharePercent',
    name: 'usable share of the rated capacity',
    unit: '%',
    of: ({ energy }) => energy[0]?.usableSharePercent ?? lacking({ code: 'energy.noRun' }),
  },
  {
    quantity: 'conversionEfficiencyPercent',
    name: 'conversion efficiency',
    unit: '%',
    of: ({ energy }) => energy[0]?.conversionEfficiencyPercent ?? lacking({ code: 'energy.noRun' }),
  },
];

/**
 * Units side by side, a row a figure.
 *
 * @returns empty for fewer than two units; rows that no unit has a value for are left out.
 */
export function compareUnits(units: readonly UnitResult[]): readonly ComparisonRow[] {
  if (units.length < 2) return [];
  return COMPARED.map(({ of, ...row }) => ({ ...row, figures: units.map(of) })).filter(({ figures }) =>
    figures.some(({ value }) => value !== null),
  );
}

function atEnd(
  { points }: UnitResult,
  end: 'noLoad' | 'fullLoad',
  key: 'rmsV' | 'frequencyHz' | 'thdPercent' | 'crestFactor',
): Figure {
  const ends = sweepEnds(points);
  return 'reason' in ends ? lacking(ends.reason) : ends[end].point[key];
}

function largest(figures: readonly Figure[], none: BenchReason): Figure {
  const [most] = figures
    .filter(({ value }) => value !== null)
    .sort((a, b) => Math.abs(b.value ?? 0) - Math.abs(a.value ?? 0));
  return most ?? figures[0] ?? lacking(none);
}
