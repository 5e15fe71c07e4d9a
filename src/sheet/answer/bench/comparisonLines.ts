import type { Figure } from '../../../base/figure.ts';
import type { BenchDocument } from '../../../bench/benchDocument.ts';
import { cleanTexts } from '../../cleanTexts.ts';
import { figureText } from '../../numbers/figureText.ts';
import { alignColumns } from '../alignColumns.ts';
import { shortText } from '../shortText.ts';
import { terminalText } from '../terminalText.ts';

/** Units side by side, a column a unit; none for one unit alone. */
export function comparisonLines(told: BenchDocument): readonly string[] {
  const { units, comparison } = cleanTexts(told);
  if (comparison.length === 0) return [];
  const head = units.map(({ name, earlier }) =>
    earlier === undefined ? shortText(name, 24) : `${shortText(name, 24)}, earlier`,
  );
  const rows = comparison.map(({ name, unit, figures }) => [
    name,
    ...figures.map((figure) => (figure.value === null ? '–' : figureCell(figure, unit))),
  ]);
  return alignColumns([['Side by side', ...head], ...rows]).map(terminalText);
}

function figureCell(figure: Figure, unit: string): string {
  if (unit !== 's' || figure.value === null) return figureText(figure, unit);
  return figureText({ value: 1000 * figure.value, uncertainty: 1000 * figure.uncertainty }, 'ms');
}
