import type { BenchUnit } from '../../../bench/benchDocument.ts';
import type { NamedFigure } from '../namedFigure.ts';

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
