import type { BenchUnit } from '../../../bench/benchDocument.ts';
import { cleanTexts } from '../../cleanTexts.ts';
import { decimalText } from '../../numbers/decimalText.ts';
import { figureText } from '../../numbers/figureText.ts';
import { holdUnits } from '../../numbers/holdUnits.ts';
import { breakLines } from '../breakLines.ts';
import { capitalised } from '../capitalised.ts';
import { shareLines } from '../shareLines.ts';
import { terminalText } from '../terminalText.ts';
import { benchClaimsSentence } from './benchClaimsSentence.ts';
import { benchSpoken } from './benchSpoken.ts';
import { benchTable } from './benchTable.ts';

export interface BenchLinesOptions {
  /** Where the sweep's sheet was written; its line is left out without. */
  readonly sheetPath?: string;
  /** Characters a line; default 80, at least 40. */
  readonly width?: number;
}

/** Above the table; more than this and nobody reads on. */
const MOST_LINES = 14;

/** A unit's bench test for the terminal: at most 14 lines, then the sweep as a table. */
export function benchLines(told: BenchUnit, options: BenchLinesOptions = {}): readonly string[] {
  const unit = cleanTexts(told);
  const width = Math.max(options.width ?? 80, 40);
  const lines = (text: string, most: number, lead = '  ', indent = '  '): string[] =>
    breakLines(holdUnits(text), { width, most, lead, indent });
  const sheet = options.sheetPath === undefined ? [] : [`  Sheet: ${options.sheetPath}`];
  const tail = [...sheet, ...lines(benchSpoken(unit).join(' '), 3, '  Say: ', '       ')];
  const topics = [
    regulationSentence(unit),
    unit.claims.length === 0 ? null : `Claims: ${benchClaimsSentence(unit.claims)}`,
    onsetSentence(unit),
    stepsSentence(unit),
    energySentence(unit),
    unit.notices.length === 0 ? null : `Doubt: ${unit.notices.map(({ message }) => message).join(' ')}`,
  ].filter((topic) => topic !== null);
  const granted = shareLines(
    topics.map((topic) => lines(topic, MOST_LINES).length),
    MOST_LINES - 1 - tail.length,
  );
  const middle = topics.flatMap((topic, i) => (granted[i] === 0 ? [] : lines(topic, granted[i] ?? 0)));
  const table = unit.points.length === 0 ? [] : benchTable(unit).map((row) => `  ${row}`);
  return [unit.label, ...middle, ...tail, ...table].map(terminalText);
}

function regulationSentence({ regulation, droop }: BenchUnit): string {
  const { regulationPercent, noLoadW, fullLoadW } = regulation;
  const first =
    regulationPercent.value === null
      ? `No regulation: ${regulationPercent.reason}.`
      : `Regulation ${figureText(regulationPercent, '%')} from ${watts(noLoadW ?? 0)} to ${watts(fullLoadW ?? 0)}.`;
  if (droop.outputImpedanceOhm.value === null) return first;
  return `${first} Output impedance ${figureText(droop.outputImpedanceOhm, 'Ω')}.`;
}

function onsetSentence({ points, clipping, leavesRange }: BenchUnit): string | null {
  if (points.length < 2) return null;
  const said = [
    clipping.betweenW === null
      ? null
      : `The tops flatten between ${watts(clipping.betweenW[0])} and ${watts(clipping.betweenW[1])} (${clipping.shownBy}).`,
    leavesRange.betweenW === null
      ? null
      : `The voltage leaves its range between ${watts(leavesRange.betweenW[0])} and ${watts(leavesRange.betweenW[1])} (${leavesRange.shownBy}, ${rangeWords(leavesRange)}).`,
  ].filter((sentence) => sentence !== null);
  return said.length === 0 ? null : said.join(' ');
}

function rangeWords({ range }: BenchUnit['leavesRange']): string {
  return range?.from === 'claim' ? 'claimed' : '±10 % of nominal';
}

function stepsSentence({ steps, transfers }: BenchUnit): string | null {
  const said = [
    ...steps.map(({ fromW, toW, direction, deviationPercent, recoveryS }) => {
      const load =
        fromW === null || toW === null ? `load ${direction}` : `${decimalText(fromW, 0)} to ${watts(toW)}`;
      const back = recoveryS.value === null ? 'not settled' : `over in ${milliseconds(recoveryS.value, 0)}`;
      return `${load}${deviationPercent.value === null ? '' : ` ${signedPercent(deviationPercent.value)}`}, ${back}`;
    }),
    ...transfers.map(
      ({ transferS }) =>
        `a transfer${transferS.value === null ? '' : `, ${milliseconds(transferS.value, 1)} without voltage`}`,
    ),
  ];
  const lead = steps.length === 0 ? '' : steps.length === 1 ? 'step ' : 'steps: ';
  return said.length === 0 ? null : `${capitalised(lead + said.join('; '))}.`;
}

function signedPercent(percent: number): string {
  return `${percent > 0 ? '+' : ''}${decimalText(percent, 1)} %`;
}

function milliseconds(seconds: number, decimals: number): string {
  return `${decimalText(1000 * seconds, decimals)} ms`;
}

function energySentence({ energy }: BenchUnit): string | null {
  const [run] = energy;
  if (run === undefined) return null;
  const shares = [
    ['usable share', run.usableSharePercent],
    ['outlet share', run.outletSharePercent],
    ['conversion efficiency', run.conversionEfficiencyPercent],
  ] as const;
  const said = shares.flatMap(([words, figure]) =>
    figure.value === null ? [] : [`${words} ${decimalText(figure.value, 0)} %`],
  );
  return `Energy: ${said.join(', ')}.`;
}

function watts(loadW: number): string {
  return `${decimalText(loadW, 0)} W`;
}
