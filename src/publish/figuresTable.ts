import type { MeasureResult } from '../assay/measureDocument.ts';
import { hypot } from '../base/elementary.ts';
import type { Figure, MeasuredFigure } from '../base/figure.ts';
import { claimsVerdict, outcomeWords } from '../words/claimWords.ts';
import { figureRows, mainFigures, type NamedFigure } from '../words/figureRows.ts';
import { inputRows, powerRows } from '../words/loadPhrase.ts';
import { storyOf } from '../words/story.ts';
import { storyWords } from '../words/storyWords.ts';
import { cleanTexts, fileName } from '../words/text.ts';

/** A cell: text, a number as measured, or empty. */
export type TableCell = string | number | null;

interface Column {
  readonly heading: string;
  readonly cell: (result: MeasureResult) => TableCell;
}

/** The figures of each quantity that a result may hold, by what they are called in a heading. */
const quantities: Readonly<Record<string, (result: MeasureResult) => readonly NamedFigure[]>> = {
  voltage: ({ voltage }) => (voltage === undefined ? [] : figureRows(voltage, 'V', false)),
  current: ({ current }) => (current === undefined ? [] : figureRows(current, 'A', false)),
  power: ({ power }) => (power === undefined ? [] : powerRows(power)),
  'DC input': ({ input }) => (input === undefined ? [] : inputRows(input)),
};

/**
 * Results as a table, a row each, headings first: what was measured, how its claims stand, what happened where
 * something did, then every figure that one of them has, unrounded, with its uncertainty in the column after it and, where one lies below what the
 * instrument can resolve, what it is at most; by whom and from which bytes last.
 *
 * @param told - texts are cleaned here, and what a spreadsheet would take for a formula is disarmed.
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
    ...(results.some((result) => storyOf(result) !== null) ? eventColumns : []),
    { heading: 'nominal voltage (V)', cell: ({ nominal }) => nominal?.voltageV ?? null },
    { heading: 'nominal frequency (Hz)', cell: ({ nominal }) => nominal?.frequencyHz ?? null },
    ...Object.entries(quantities).flatMap(([quantity, figuresOf]) =>
      figureColumns(quantity, results, figuresOf),
    ),
    { heading: 'THD to order', cell: (result) => mainFigures(result)?.thdOrders ?? null },
    { heading: 'doubts', cell: ({ notices }) => notices.length },
    { heading: 'sha256', cell: ({ sha256 }) => sha256 },
    { heading: 'measured with', cell: () => `sineassay ${program}` },
  ];
  return [
    columns.map(({ heading }) => heading),
    ...results.map((result) => columns.map(({ cell }) => inert(cell(result)))),
  ];
}

/** What the record's story is, in words and in numbers; a table of steady waves has none of these. */
const eventColumns: readonly Column[] = [
  { heading: 'what happened', cell: (result) => storyWords(result)?.brief ?? null },
  { heading: 'event', cell: (result) => eventOf(result)?.kind ?? null },
  ...secondsColumns('event at', (result) => eventOf(result)?.atS),
  ...secondsColumns('event lasts', (result) => eventOf(result)?.durationS),
  { heading: 'load at the event (W)', cell: (result) => eventOf(result)?.loadW ?? null },
  ...secondsColumns('load held before it', (result) => eventOf(result)?.heldS),
  {
    heading: 'events and steps in all',
    cell: ({ events, steps }) => events.length + steps.length,
  },
];

interface EventCells {
  readonly kind: string;
  readonly atS: Figure;
  readonly durationS?: Figure;
  readonly loadW?: number;
  readonly heldS?: Figure;
}

function eventOf(result: MeasureResult): EventCells | null {
  const story = storyOf(result);
  if (story === null) return null;
  if (story.kind === 'step') return { kind: `load ${story.step.direction}`, atS: story.step.atS };
  if (story.kind === 'excursion') {
    const { kind, startS, durationS } = story.excursion;
    return { kind, atS: { value: startS, uncertainty: 0 }, durationS: { value: durationS, uncertainty: 0 } };
  }
  const { event } = story;
  return {
    ...event,
    atS: event.kind === 'inrush' ? event.atS : event.startS,
    ...(event.kind === 'failed start' ? { durationS: between(event.startS, event.endS) } : {}),
  };
}

function between(start: MeasuredFigure, end: MeasuredFigure): MeasuredFigure {
  return { value: end.value - start.value, uncertainty: hypot(start.uncertainty, end.uncertainty) };
}

function secondsColumns(
  what: string,
  figureOf: (result: MeasureResult) => Figure | undefined,
): readonly Column[] {
  const number = (result: MeasureResult, key: 'value' | 'uncertainty'): TableCell => {
    const figure = figureOf(result);
    return figure === undefined || figure.value === null ? null : figure[key];
  };
  return [
    { heading: `${what} (s)`, cell: (result) => number(result, 'value') },
    { heading: `${what} uncertainty (s)`, cell: (result) => number(result, 'uncertainty') },
  ];
}

function inert(cell: TableCell): TableCell {
  return typeof cell === 'string' ? escapeFormula(cell) : cell;
}

function figureColumns(
  quantity: string,
  results: readonly MeasureResult[],
  figuresOf: (result: MeasureResult) => readonly NamedFigure[],
): Column[] {
  const figures = results.flatMap(figuresOf);
  // A name may stand for a figure in volts and one in amperes: name and unit together are a heading.
  const columns = new Map(figures.map(([name, , unit]) => [`${name} (${unit})`, { name, unit }]));
  return [...columns.values()].flatMap(({ name, unit }): Column[] => {
    const isOwn = ([otherName, , otherUnit]: NamedFigure): boolean =>
      otherName === name && otherUnit === unit;
    const figureOf = (result: MeasureResult): MeasuredFigure | undefined => {
      const figure = figuresOf(result).find(isOwn)?.[1];
      return figure === undefined || figure.value === null ? undefined : figure;
    };
    const column = (what: string, cell: (figure: MeasuredFigure) => TableCell): Column => ({
      heading: `${quantity} ${name}${what}${unit === '' ? '' : ` (${unit})`}`,
      cell: (result) => {
        const figure = figureOf(result);
        return figure === undefined ? null : cell(figure);
      },
    });
    const isBound = figures.some(
      (row) => isOwn(row) && row[1].value !== null && row[1].notAbove !== undefined,
    );
    return [
      column('', ({ value }) => value),
      column(' uncertainty', ({ uncertainty }) => uncertainty),
      ...(isBound ? [column(' not above', ({ notAbove = null }) => notAbove)] : []),
    ];
  });
}

function claimsCell({ claims }: MeasureResult): string | null {
  const verdict = claimsVerdict(claims);
  return verdict === null ? null : outcomeWords(verdict.outcome);
}

/** Signs that a spreadsheet starts a formula with, plain or full-width, be it after blanks and quotes. */
const formulaStart = /^(?:[\s'"\u2018-\u201f\uff02\uff07]*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r])/u;

/** A text as a cell that no spreadsheet takes for a formula: with an apostrophe in front where it might. */
export function escapeFormula(text: string): string {
  return formulaStart.test(text) ? `'${text}` : text;
}
