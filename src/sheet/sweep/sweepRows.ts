import type { Figure } from '../../base/figure.ts';
import type { BenchUnit, Onset } from '../../bench/benchDocument.ts';
import { figureText } from '../numbers/figureText.ts';
import { secondsFigureText } from '../numbers/secondsText.ts';

/** What a sweep shows beside its curves, a row each; what was not reached or not measured is left out. */
export function sweepRows(unit: BenchUnit): [name: string, value: string][] {
  const { clipping, leavesRange, droop, steps, transfers, energy } = unit;
  const farthest = largest(steps.map(({ deviationPercent }) => deviationPercent));
  const longest = largest(transfers.map(({ transferS }) => transferS));
  return [
    ['Tops flatten from', onsetText(clipping)],
    ['Voltage leaves its range at', onsetText(leavesRange)],
    ...row('Voltage at no current, by the line', droop.openCircuitV, 'V'),
    ...row('Farthest at a load step', farthest, '% of nominal'),
    ...(longest === null ? [] : [['Longest transfer', secondsFigureText(longest)] as [string, string]]),
    ...row('Conversion efficiency', energy[0]?.conversionEfficiencyPercent ?? null, '%'),
  ];
}

function onsetText({ atW, betweenW }: Onset): string {
  return atW.value === null || betweenW === null ? 'not in this sweep' : figureText(atW, 'W');
}

function row(name: string, figure: Figure | null, unit: string): [string, string][] {
  return figure === null || figure.value === null ? [] : [[name, figureText(figure, unit)]];
}

function largest(figures: readonly Figure[]): Figure | null {
  const size = ({ value }: Figure): number => Math.abs(value ?? 0);
  return figures.filter(({ value }) => value !== null).sort((a, b) => size(b) - size(a))[0] ?? null;
}
