import type { BenchPoint, BenchStep, BenchTransfer, BenchUnit } from '../../bench/benchDocument.ts';
import { sweepRows } from '../../draw/sweep/sweepRows.ts';
import { pointKind, pointState } from '../../words/bench/benchSpoken.ts';
import { unitFigures } from '../../words/bench/benchTable.ts';
import { overloadHeads, overloadRow, transferHeads, transferRow } from '../../words/bench/overloadWords.ts';
import { decimalText, significantText, withUnit } from '../../words/numbers.ts';
import { figureText, secondsFigureText } from '../../words/quantities.ts';
import { fileName } from '../../words/text.ts';
import { claimsTable } from './captureSections.ts';
import { dataTable, figureTable, html, type Markup, outcomeMark, valueCells } from './html.ts';

/** All figures of a unit as tables: its sweep, its claims, where it gives way, its changes; and its doubts. Texts must be clean. */
export function unitTables(unit: BenchUnit): Markup {
  const { points, claims, steps, transfers, notices, overloads = [], transferSides = [] } = unit;
  return html`${
    overloads.length > 0 &&
    textTable(
      'Overloads, and loads under which the output was lost',
      overloadHeads,
      overloads.map(overloadRow),
    )
  }${points.length > 0 && pointsTable(points)}${
    claims.length > 0 && claimsTable(claims, 'Claims, each at its worst capture', atLoad)
  }${figureTable('Over the sweep', unitFigures(unit))}${dataTable({
    caption: 'Where it gives way',
    columns: [{ heading: 'What' }, { heading: 'Found' }],
    rows: sweepRows(unit).slice(0, 2),
  })}${changesTable(steps, transfers)}${
    transferSides.length > 0 &&
    textTable('Transfers by direction', transferHeads, transferSides.map(transferRow))
  }${
    notices.length > 0 &&
    html`<h3>Doubts</h3><ul class="plain">
${notices.map(({ message }) => html`<li>${message}</li>\n`)}</ul>
`
  }`;
}

function textTable(caption: string, heads: readonly string[], rows: readonly (readonly string[])[]): Markup {
  return dataTable({
    caption,
    columns: heads.map((heading) => ({ heading })),
    rows: rows.map((row) => [...row]),
  });
}

function atLoad({ worstLoadW }: BenchUnit['claims'][number]): string {
  return worstLoadW === null ? '' : ` at ${withUnit(decimalText(worstLoadW, 0), 'W')}`;
}

function pointsTable(points: readonly BenchPoint[]): Markup {
  return dataTable({
    caption: 'By load; ± reads: about 95 % sure that the true value lies within',
    columns: [
      { heading: 'Load, W', isNumber: true },
      ...['RMS, V', 'Frequency, Hz', 'Crest factor', 'THD, %'].flatMap((heading) => [
        { heading, isNumber: true },
        { heading: '±', isNumber: true },
      ]),
      { heading: 'Kind' },
      { heading: 'Claims' },
    ],
    rows: points.map((point) => [
      {
        shown: point.loadW.value === null ? 'unknown' : significantText(point.loadW.value, 4),
        sort: point.loadW.value,
      },
      ...valueCells(point.rmsV),
      ...valueCells(point.frequencyHz),
      ...valueCells(point.crestFactor),
      ...valueCells(point.thdPercent),
      pointKind(point),
      pointState(point) ?? (point.outcome === null ? '' : outcomeMark(point.outcome)),
    ]),
  });
}

function changesTable(steps: readonly BenchStep[], transfers: readonly BenchTransfer[]): Markup {
  const rows = [
    ...steps.map((step) => [
      step.fromW === null || step.toW === null
        ? `load step ${step.direction}`
        : `${decimalText(step.fromW, 0)} to ${withUnit(decimalText(step.toW, 0), 'W')}`,
      `${figureText(step.deviationPercent, '%')} of nominal, settled in ${secondsFigureText(step.recoveryS)}`,
      fileName(step.file),
    ]),
    ...transfers.map(({ transferS, file }) => [
      'transfer',
      `${secondsFigureText(transferS)} without voltage`,
      fileName(file),
    ]),
  ];
  if (rows.length === 0) return html``;
  return dataTable({
    caption: 'Load steps and transfers',
    columns: [{ heading: 'Change' }, { heading: 'Found' }, { heading: 'Capture' }],
    rows,
  });
}
