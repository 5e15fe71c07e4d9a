import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { BenchUnit } from '../../bench/benchDocument.ts';
import { decimalText } from '../numbers/decimalText.ts';
import { figureText } from '../numbers/figureText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import type { DotColumn, DotRow } from './dotColumn.ts';
import { deviationAt, endPoint, thdAt } from './unitEnds.ts';

/** What units are compared by: voltage, distortion, and efficiency where one of them has it. */
export function dotColumns(units: readonly BenchUnit[]): readonly DotColumn[] {
  const efficiencies = units.map(({ energy }) => energy[0]?.conversionEfficiencyPercent ?? null);
  const ends = 'hollow: no load; filled: full load';
  return [
    {
      heading: 'Voltage from nominal',
      aside: `${ends}; dashed: ±10 %`,
      unit: '%',
      rows: units.map(voltageRow),
      limits: [-10, 10],
      least: [-11, 11],
      share: 1.15,
    },
    {
      heading: 'THD',
      aside: ends,
      unit: '%',
      rows: units.map(distortionRow),
      limits: [],
      least: [0, 5],
      share: 1,
    },
    ...(efficiencies.some((figure) => figure !== null && figure.value !== null)
      ? [
          {
            heading: 'Efficiency',
            aside: 'AC out of DC',
            unit: '%',
            rows: efficiencies.map(efficiencyRow),
            limits: [],
            least: [50, 100] as const,
            share: 0.55,
          },
        ]
      : []),
  ];
}

function voltageRow(unit: BenchUnit): DotRow {
  const { regulationPercent } = unit.regulation;
  const volts = (['noLoad', 'fullLoad'] as const).flatMap((end) => {
    const value = endPoint(unit, end)?.rmsV.value ?? null;
    return value === null ? [] : [decimalText(value, 1)];
  });
  const text = [
    ...(volts.length === 0 ? [] : [withUnit(volts.join(' to '), 'V')]),
    regulationPercent.value === null
      ? `no regulation: ${regulationPercent.reason}`
      : `regulation ${figureText(regulationPercent, '%')}`,
  ].join(', ');
  return { noLoad: deviationAt(unit, 'noLoad'), fullLoad: deviationAt(unit, 'fullLoad'), text };
}

function distortionRow(unit: BenchUnit): DotRow {
  const [noLoad, fullLoad] = [thdAt(unit, 'noLoad'), thdAt(unit, 'fullLoad')];
  const text =
    noLoad.value === null && fullLoad.value === null
      ? fullLoad.reason
      : `${figureText(noLoad, '%')}, then ${figureText(fullLoad, '%')}`;
  return { noLoad: measured(noLoad), fullLoad: measured(fullLoad), text };
}

function efficiencyRow(figure: Figure | null): DotRow {
  const text = figure === null || figure.value === null ? 'not measured' : figureText(figure, '%');
  return { noLoad: null, fullLoad: figure === null ? null : measured(figure), text };
}

function measured(figure: Figure): MeasuredFigure | null {
  return figure.value === null ? null : figure;
}
