import type { BenchDocument } from '../../../bench/benchDocument.ts';
import { shortText } from '../../answer/shortText.ts';
import { figureText } from '../../numbers/figureText.ts';
import { secondsFigureText } from '../../numbers/secondsText.ts';
import { dataTable } from '../dataTable.ts';
import { html, type Markup } from '../html.ts';

/** Units side by side, a column a unit; nothing for one alone. Texts must be clean. */
export function comparisonTable({ units, comparison }: BenchDocument): Markup {
  if (comparison.length === 0) return html``;
  return dataTable({
    stacks: true,
    caption: '± reads: about 95 % sure that the true value lies within',
    columns: [
      { heading: 'Quantity' },
      ...units.map(({ name, earlier }) => ({
        heading: `${shortText(name, 40)}${earlier === undefined ? '' : ', earlier'}`,
        isNumber: true,
      })),
    ],
    rows: comparison.map(({ name, unit, figures }) => [
      name,
      ...figures.map((figure) => ({
        shown:
          figure.value === null ? '–' : unit === 's' ? secondsFigureText(figure) : figureText(figure, unit),
        sort: figure.value,
      })),
    ]),
  });
}
