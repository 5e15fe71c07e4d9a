import type { Figure } from '../base/figure.ts';
import type { CompareDocument, Difference } from '../bench/compare/compareDocument.ts';
import { waveformKinds } from '../judge/waveform/kinds.ts';
import { outcomeWords } from './claimWords.ts';
import { breakLines } from './courseWords.ts';
import { bindUnits, withUnit } from './numbers.ts';
import { figureParts, figureText } from './quantities.ts';
import { alignColumns, capitalised, cleanText, cleanTexts, shortText, terminalText } from './text.ts';

interface CompareLinesOptions {
  /** Characters a line. */
  readonly width: number;
  /** Every figure and not the main ones alone. */
  readonly all: boolean;
  readonly sheetPath?: string;
}

const indent = '  ';

/** A comparison for the terminal: which two, the sentence, a table, what to doubt. */
export function compareLines(document: CompareDocument, options: CompareLinesOptions): readonly string[] {
  const clean = cleanTexts(document);
  const { width, all, sheetPath } = options;
  const lines = (text: string): string[] => breakLines(bindUnits(text), { width, lead: indent, indent });
  const shown = clean.differences.filter((difference) => all || isMainDifference(difference));
  const { claims, notices, sameInstrument } = clean;
  const moved = claims.filter(({ a, b }) => a !== b);
  return [
    `A ${nameOf(clean.a, width)}`,
    `B ${nameOf(clean.b, width)}`,
    ...lines(compareSentence(clean)),
    ...alignColumns([['', 'A', 'B', 'B − A', ''], ...shown.map(row)]).map((line) => indent + line),
    ...moved.flatMap(({ text, a, b }) =>
      lines(`“${text}” ${outcomeWords(a)} for A and ${outcomeWords(b)} for B.`),
    ),
    ...lines(
      sameInstrument
        ? 'Taken with one instrument, as told: its gain, probe, offset and time base count once.'
        : 'Taken as of two instruments; --same-instrument says that one scope and probe at one setting took both.',
    ),
    ...notices.flatMap(({ message }) => lines(`Doubt: ${message}`)),
    ...(sheetPath === undefined ? [] : [`${indent}Sheet: ${cleanText(sheetPath)}`]),
  ].map(terminalText);
}

function row(difference: Difference): string[] {
  const { quantity, unit, a, b } = difference;
  return [
    quantity,
    figureText(a, unit),
    figureText(b, unit),
    differenceText(difference),
    verdictWords(difference),
  ];
}

function nameOf({ file, label, load }: CompareDocument['a'], width: number): string {
  const told = [label, load].filter((text) => text !== undefined).map((text) => shortText(text, 30));
  const after = told.length === 0 ? '' : ` (${told.join(', ')})`;
  return shortText(file, Math.max(20, width - 2 - after.length), 'start') + after;
}

/** Asked about first, in this order. */
const asked: readonly (readonly [key: string, name: string])[] = [
  ['voltage.thdPercent', 'distortion'],
  ['voltage.rmsV', 'voltage'],
  ['voltage.crestFactor', 'crest factor'],
  ['voltage.frequencyHz', 'frequency'],
];

/**
 * What a comparison comes to, in one sentence: "A is a pure sine, B a modified sine; B has more distortion, 41.5 %
 * against 1.3 % (a difference of 40.2 ± 0.4 points), and a lower crest factor; voltage can’t be told apart."
 */
export function compareSentence({ kind, differences }: CompareDocument): string {
  const found = asked.flatMap(([key, name]) => {
    const difference = differences.find((one) => one.key === key);
    return difference === undefined ? [] : [{ name, difference }];
  });
  const edge = kind.significant === null ? ', one of them at the edge' : '';
  const kinds = kind.a === kind.b ? [] : [`A is ${article(kind.a)}, B ${article(kind.b)}${edge}`];
  const larger = found.filter(({ difference }) => difference.significant);
  const moved = larger.map(({ name, difference }, i) =>
    i === 0 ? directionOf(name, difference) + amountOf(difference) : directionOf(name, difference),
  );
  const alike = found.filter(({ difference }) => difference.significant === false).map(({ name }) => name);
  const parts = [
    ...kinds,
    ...(moved.length === 0 ? [] : [`B has ${listed(moved)}`]),
    ...(alike.length === 0 ? [] : [`${listed(alike)} can’t be told apart`]),
  ];
  return parts.length === 0
    ? 'They have no figure in common that can be compared.'
    : `${capitalised(parts.join('; '))}.`;
}

function directionOf(name: string, { difference }: Difference): string {
  const isMore = (difference.value ?? 0) > 0;
  const isAmount = name === 'distortion' || name === 'voltage';
  return isAmount ? `${isMore ? 'more' : 'less'} ${name}` : `a ${isMore ? 'higher' : 'lower'} ${name}`;
}

function amountOf({ a, b, unit, difference }: Difference): string {
  const size =
    difference.value === null
      ? ''
      : ` (a difference of ${figureText({ ...difference, value: Math.abs(difference.value) }, unit === '%' ? 'points' : unit)})`;
  return `, ${valueText(b, unit)} against ${valueText(a, unit)}${size}`;
}

/** To the place of its uncertainty, which the table has. */
function valueText(figure: Figure, unit: string): string {
  return figure.value === null || figure.notAbove !== undefined
    ? figureText(figure, unit)
    : withUnit(figureParts(figure).value, unit);
}

function article(kind: CompareDocument['kind']['a']): string {
  const { named, briefly = named } = waveformKinds[kind];
  return briefly ?? kind;
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** "+2.00 ± 0.35 %", or a dash where there is none. */
export function differenceText({ difference, unit }: Difference): string {
  if (difference.value === null) return '–';
  const { value, uncertainty } = figureParts(difference);
  const signed = difference.value > 0 ? `+${value}` : value;
  return withUnit(uncertainty === null ? signed : `${signed} ± ${uncertainty}`, unit);
}

/** "larger", "not told apart", or why neither can be said. */
export function verdictWords({ significant, difference }: Difference): string {
  if (significant === null) return difference.value === null ? 'one is missing' : 'can’t be said';
  return significant ? 'differs' : 'not told apart';
}

const main = ['rmsV', 'rmsA', 'frequencyHz', 'crestFactor', 'thdPercent', 'thdNoisePercent', 'activeW'];

/** Whether a difference is of a figure that is asked about first. */
export function isMainDifference({ key }: Difference): boolean {
  return main.includes(key.split('.')[1] ?? '');
}
