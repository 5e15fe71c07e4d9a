import type { Figure } from '../../base/figure.ts';
import type { NamedFigure } from '../answer/namedFigure.ts';
import { boundText } from '../numbers/boundText.ts';
import { figureParts } from '../numbers/figureParts.ts';
import { type DataCell, dataTable } from './dataTable.ts';
import { html, type Markup } from './html.ts';

/** Figures as a table: what, value, uncertainty and unit in columns of their own; or why there is none. */
export function figureTable(caption: string, figures: readonly NamedFigure[]): Markup {
  return dataTable({
    caption,
    columns: [
      { heading: 'Quantity' },
      { heading: 'Value', isNumber: true },
      { heading: '±', isNumber: true },
      { heading: 'Unit' },
    ],
    rows: figures.map(([name, figure, unit]) => [
      figure.value === null ? html`${name} <small>not measurable: ${figure.reason}</small>` : name,
      ...valueCells(figure),
      unit,
    ]),
  });
}

/** A figure as two cells: value and uncertainty; a bound is said as one. */
export function valueCells(figure: Figure): [DataCell, DataCell] {
  if (figure.value === null) {
    return [
      { shown: '–', sort: null },
      { shown: '', sort: null },
    ];
  }
  const { value, uncertainty } = figureParts(figure);
  const { notAbove } = figure;
  const isBound = notAbove !== undefined;
  return [
    { shown: isBound ? html`<small>not above</small> ${boundText(notAbove)}` : value, sort: figure.value },
    { shown: isBound ? '' : (uncertainty ?? ''), sort: isBound ? null : figure.uncertainty },
  ];
}
