import type { Figure } from '../../base/figure.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { claimsVerdict } from '../answer/claimsVerdict.ts';
import { figureRows } from '../answer/figureRows.ts';
import { fileName } from '../answer/fileName.ts';
import type { NamedFigure } from '../answer/namedFigure.ts';
import { outcomeWords } from '../answer/outcomeWords.ts';
import { inputRows, powerRows } from '../answer/powerRows.ts';
import { cleanTexts } from '../cleanTexts.ts';

/** A cell: text, a number as measured, or empty. */
export type TableCell = string | number | null;

interface Column {
  readonly heading: string;
  readonly cell: (result: MeasureResult) => TableCell;
}

/** The figures of each quantity that a result may hold, by what they are called in a heading. */
const quantities: Readonly<Record<string, (result: MeasureResult) => readonly NamedFigure[]>> = {
  voltage: ({ voltage }) => (voltage === undefined ? [] : figureRows(voltage)),
  current: ({ current }) => (current === undefined ? [] : figureRows(current)),
  power: ({ power }) => (power === undefined ? [] : powerRows(power)),
  'DC input': ({ input }) => (input === undefined ? [] : inputRows(input)),
};

/**
 * Results as a table, a row each, headings first: what was measured, how its claims stand, then every figure that
 * one of them has, with its uncertainty in the column after it, unrounded; by whom and from which bytes last.
 *
 * @param told - texts are cleaned here; what a spreadsheet takes for a formula is for the writer to disarm.
 * @param program - version of the program.
 */
export function figuresTable(told: readonly MeasureResult[], program: string): TableCell[][] {
  const results = cleanTexts(told);
  const columns: Column[] = [
    { heading: 'capture', cell: ({ file }) => fileName(file) },
    { heading: 'unit under test', cell: ({ label }) => label ?? null },
    { heading: 'load', cell: ({ load }) => load ?? null },
    { heading: 'kind of wave', cell: ({ waveform }) => waveform.kind },
    { heading: 'claims', cell: claimsCell },
    { heading: 'nominal voltage (V)', cell: ({ nominal }) => nominal?.voltageV ?? null },
    { heading: 'nominal frequency (Hz)', cell: ({ nominal }) => nominal?.frequencyHz ?? null },
    ...Object.entries(quantities).flatMap(([quantity, figuresOf]) =>
      figureColumns(quantity, results, figuresOf),
    ),
    { heading: 'doubts', cell: ({ notices }) => notices.length },
    { heading: 'sha256', cell: ({ sha256 }) => sha256 },
    { heading: 'measured with', cell: () => `sineassay ${program}` },
  ];
  return [
    columns.map(({ heading }) => heading),
    ...results.map((result) => columns.map(({ cell }) => cell(result))),
  ];
}

function figureColumns(
  quantity: string,
  results: readonly MeasureResult[],
  figuresOf: (result: MeasureResult) => readonly NamedFigure[],
): Column[] {
  const units = new Map(results.flatMap(figuresOf).map(([name, , unit]) => [name, unit]));
  return [...units].flatMap(([name, unit]): Column[] => {
    const figureOf = (result: MeasureResult): Figure | undefined =>
      figuresOf(result).find(([other]) => other === name)?.[1];
    const inUnit = unit === '' ? '' : ` (${unit})`;
    return [
      { heading: `${quantity} ${name}${inUnit}`, cell: (result) => figureOf(result)?.value ?? null },
      {
        heading: `${quantity} ${name} uncertainty${inUnit}`,
        cell: (result) => {
          const figure = figureOf(result);
          return figure === undefined || figure.value === null ? null : figure.uncertainty;
        },
      },
    ];
  });
}

function claimsCell({ claims }: MeasureResult): string | null {
  const verdict = claimsVerdict(claims);
  return verdict === null ? null : outcomeWords(verdict.outcome);
}
