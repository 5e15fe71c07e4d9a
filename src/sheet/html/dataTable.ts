import { html, type Markup, type Piece } from './html.ts';

export interface DataColumn {
  readonly heading: string;
  /** Set to the right, and sorted by value. */
  readonly isNumber?: boolean;
}

/** What a cell shows; with what it is sorted by where that is not its text: null comes last. */
export type DataCell = Piece | { readonly shown: Piece; readonly sort: number | null };

export interface DataTable {
  readonly caption: string;
  readonly columns: readonly DataColumn[];
  /** The first cell of each heads its row. */
  readonly rows: readonly (readonly DataCell[])[];
  /** True: a row becomes a block on a narrow screen; default: where there are more than four columns. */
  readonly stacks?: boolean;
}

/** More than a narrow screen holds. */
const mostColumns = 4;

/** A table that `sortTables` makes sortable, and that reads as a plain one without. */
export function dataTable({
  caption,
  columns,
  rows,
  stacks = columns.length > mostColumns,
}: DataTable): Markup {
  // Roles in words, since a browser drops those of a table that is laid out in another way.
  return html`<table class="data${stacks && ' stacks'}" role="table">
<caption>${caption}</caption>
<thead role="rowgroup"><tr role="row">${columns.map(
    ({ heading, isNumber = false }) =>
      html`<th role="columnheader" scope="col"${isNumber && html` class="number"`}>${heading}</th>`,
  )}</tr></thead>
<tbody role="rowgroup">
${rows.map(
  (cells) =>
    html`<tr role="row">${cells.map((cell, i) => dataCell(cell, columns[i]!, i === 0, stacks))}</tr>
`,
)}</tbody>
</table>
`;
}

function dataCell(
  cell: DataCell,
  { heading, isNumber = false }: DataColumn,
  isHead: boolean,
  stacks: boolean,
): Markup {
  const { shown: content, sort } = isSorted(cell) ? cell : { shown: cell, sort: undefined };
  const shown = stacks ? html`<span>${content}</span>` : content;
  const attributes = html` data-label="${heading}"${isNumber && html` class="number"`}${
    sort !== undefined && html` data-sort="${sort ?? ''}"`
  }`;
  return isHead
    ? html`<th role="rowheader" scope="row"${attributes}>${shown}</th>`
    : html`<td role="cell"${attributes}>${shown}</td>`;
}

function isSorted(cell: DataCell): cell is Extract<DataCell, { readonly shown: unknown }> {
  return typeof cell === 'object' && cell !== null && 'shown' in cell;
}
