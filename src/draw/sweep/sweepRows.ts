import type { Figure } from '../../base/figure.ts';
import type { BenchPoint, BenchUnit, Onset } from '../../bench/benchDocument.ts';
import { figureText, secondsFigureText } from '../../words/quantities.ts';

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

/**
 * What the sheet of a unit's sweep is called, without the ending.
 *
 * @param unit - its name.
 * @example sweepName('Inverter A (red case)') // 'sweep-Inverter_A_red_case_'
 */
export function sweepName(unit: string): string {
  return `sweep-${unit.replaceAll(/[^\p{L}\p{N}_.-]+/gu, '_').slice(0, 100)}`;
}

/** Neighbouring loads with one kind of wave. */
interface KindRun {
  /** `pure sine`, `distorted sine, at the edge`. */
  readonly words: string;
  readonly kind: BenchPoint['kind'];
  /** True where the words are what was seen of an output that was lost. */
  readonly isLost: boolean;
  readonly fromW: number;
  readonly toW: number;
}

/** The kinds of wave along the load; captures of unknown load are left out. */
export function kindRuns(points: readonly BenchPoint[]): KindRun[] {
  const runs: KindRun[] = [];
  for (const { loadW, kind, atTheEdge, lost, loadKind } of points) {
    if (loadW.value === null) continue;
    // Where the output was lost, what is classified need not be of that load.
    const words =
      lost ??
      kind + (atTheEdge ? ', at the edge' : '') + (loadKind === undefined ? '' : `, ${loadKind} load`);
    const last = runs.at(-1);
    const isLost = lost !== undefined;
    if (last?.words === words && last.isLost === isLost)
      runs[runs.length - 1] = { ...last, toW: loadW.value };
    else runs.push({ words, kind, isLost, fromW: loadW.value, toW: loadW.value });
  }
  return runs;
}
