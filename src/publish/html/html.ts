import type { Figure } from '../../base/figure.ts';
import { escaped } from '../../draw/paper/writeText.ts';
import { outcomeWords } from '../../words/claimWords.ts';
import type { NamedFigure } from '../../words/figureRows.ts';
import { boundText, figureParts } from '../../words/quantities.ts';
import { reasonText } from '../../words/reasons.ts';
import { cleanText } from '../../words/text.ts';
import type { OpenedSheet } from '../evidence/readEvidence.ts';

/** Text that is HTML already. Only `html` makes it, so that nothing gets onto a page that was not escaped. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

/** What may stand in a template: text and numbers are escaped, markup stands as it is, null and false are nothing. */
type Piece = string | number | Markup | null | false | readonly Piece[];

/**
 * HTML from a template whose values are escaped, between tags and in quoted attributes alike.
 *
 * @example html`<b title="${'"'}">${'<i>'}</b>`.text // '<b title="&quot;">&lt;i&gt;</b>'
 */
export function html(literals: TemplateStringsArray, ...values: readonly Piece[]): Markup {
  return new Markup(literals.reduce((text, literal, i) => text + pieceText(values[i - 1]!) + literal));
}

function pieceText(piece: Piece): string {
  if (piece === null || piece === false) return '';
  if (piece instanceof Markup) return piece.text;
  if (typeof piece === 'string') return escaped(piece);
  return typeof piece === 'number' ? String(piece) : piece.map(pieceText).join('');
}

interface DataColumn {
  readonly heading: string;
  /** Set to the right, and sorted by value. */
  readonly isNumber?: boolean;
}

/** What a cell shows; with what it is sorted by where that is not its text: null comes last. */
type DataCell = Piece | { readonly shown: Piece; readonly sort: number | null };

interface DataTable {
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
      figure.value === null
        ? html`${name} <small>not measurable: ${reasonText(figure.reason)}</small>`
        : name,
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

/**
 * The address of a file in the page's own folder. It starts with `./`, so that no name is taken for a scheme
 * (`javascript:`), a host or a fragment, and whatever means something in an address is escaped.
 *
 * @param name - of a file, no path.
 * @throws RangeError for a path: a page links to its own folder only.
 */
export function fileLink(name: string): string {
  if (/[\\/]/.test(name) || name === '..' || name === '.') {
    throw new RangeError(`a page links to files of its own folder, not to ${name}`);
  }
  // Half a surrogate pair has no address; no file system gives one, but a name may be made up.
  return `./${encodeURIComponent(name.replace(/\p{Cs}/gu, '\ufffd'))}`;
}

/** A file of the page's own folder. */
export interface LinkedFile {
  readonly name: string;
  /** What it is: `picture`. */
  readonly what: string;
}

/** Files as a list of links, each named by what it is; nothing where there is none. */
export function linkList(files: readonly LinkedFile[], of = ''): Markup {
  if (files.length === 0) return html``;
  // The same word stands beside every sheet of a folder: whoever hears links alone needs to hear of which.
  return html`<ul class="links">${files.map(
    ({ name, what }) =>
      html`<li><a href="${fileLink(name)}">${what}${of !== '' && html`<span class="hidden"> of ${cleanText(of)}</span>`}</a></li>`,
  )}</ul>
`;
}

/** The picture of a sheet as part of a page, which has the typeface already: without evidence and style. */
export function inlinePicture({ picture }: Pick<OpenedSheet, 'picture'>): Markup {
  const svg = picture.replace(/<style\b[^>]*>[^<]*<\/style>\n?/g, '');
  return html`<figure class="picture">
${new Markup(svg)}</figure>
`;
}

/** An outcome in words, in the ink of what lies outside where it is bad. */
export function outcomeMark(outcome: Parameters<typeof outcomeWords>[0]): Markup {
  return isBad(outcome)
    ? html`<strong class="outside">${outcomeWords(outcome)}</strong>`
    : html`${outcomeWords(outcome)}`;
}

/** True for what fails, probably or surely. */
function isBad(outcome: Parameters<typeof outcomeWords>[0]): boolean {
  return outcome === 'fail' || outcome === 'conditional fail';
}
