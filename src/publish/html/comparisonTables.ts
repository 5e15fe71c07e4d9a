import type { BenchDocument } from '../../bench/benchDocument.ts';
import type { CompareDocument, Difference } from '../../bench/compare/compareDocument.ts';
import { outcomeWords } from '../../words/claimWords.ts';
import { differenceText, isMainDifference, verdictWords } from '../../words/compareLines.ts';
import { figureText, secondsFigureText } from '../../words/quantities.ts';
import { shortText } from '../../words/text.ts';
import { dataTable, html, type Markup } from './html.ts';

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

/** What differs between two captures as tables: the main figures, the claims, all other figures; and the doubts. Texts must be clean. */
export function differenceTables({ differences, claims, notices, sameInstrument }: CompareDocument): Markup {
  const main = differences.filter(isMainDifference);
  const others = differences.filter((difference) => !main.includes(difference));
  return html`${figuresTable('Main figures', main)}<p class="soft"><small>${
    sameInstrument
      ? 'Taken with one instrument, as told: its gain, probe, offset and time base count once.'
      : 'Taken as of two instruments, each with what it may be off by.'
  }</small></p>
${
  claims.length > 0 &&
  dataTable({
    caption: 'Claims that both were held against',
    columns: [{ heading: 'Claim' }, { heading: 'A' }, { heading: 'B' }],
    rows: claims.map(({ text, a, b }) => [text, outcomeWords(a), outcomeWords(b)]),
  })
}${figuresTable('Other figures', others)}${
  notices.length > 0 &&
  html`<h3>Doubts</h3><ul class="plain">
${notices.map(({ message }) => html`<li>${message}</li>\n`)}</ul>
`
}`;
}

function figuresTable(caption: string, differences: readonly Difference[]): Markup {
  if (differences.length === 0) return html``;
  return dataTable({
    caption: `${caption}; ± reads: about 95 % sure that the true value lies within`,
    columns: [
      { heading: 'Quantity' },
      ...['A', 'B', 'B − A'].map((heading) => ({ heading, isNumber: true })),
      { heading: 'Outcome' },
    ],
    rows: differences.map((difference) => [
      difference.quantity,
      figureText(difference.a, difference.unit),
      figureText(difference.b, difference.unit),
      differenceText(difference),
      verdict(difference),
    ]),
  });
}

function verdict(difference: Difference): Markup {
  const { significant } = difference;
  return significant === true
    ? html`<strong>${verdictWords(difference)}</strong>`
    : html`${verdictWords(difference)}`;
}
