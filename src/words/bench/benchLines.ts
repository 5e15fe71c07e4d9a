import type { Figure } from '../../base/figure.ts';
import type { BenchClaim, BenchDocument, BenchUnit } from '../../bench/benchDocument.ts';
import { claimValueText, outcomeWords } from '../claimWords.ts';
import { breakLines } from '../courseWords.ts';
import { bindUnits, decimalText } from '../numbers.ts';
import { figureText } from '../quantities.ts';
import { reasonText } from '../reasons.ts';
import { alignColumns, capitalised, cleanTexts, shortText, terminalText } from '../text.ts';
import { benchSpoken } from './benchSpoken.ts';
import { benchTable } from './benchTable.ts';
import { overloadPhrase, transferSidePhrase } from './overloadWords.ts';

interface BenchLinesOptions {
  /** Where the sweep's sheet was written; its line is left out without. */
  readonly sheetPath?: string;
  /** Characters a line; default 80, at least 40. */
  readonly width?: number;
}

/** A unit's bench test for the terminal: what it comes to and what to doubt, never cut, then the sweep as a table. */
export function benchLines(told: BenchUnit, options: BenchLinesOptions = {}): readonly string[] {
  const unit = cleanTexts(told);
  const width = Math.max(options.width ?? 80, 40);
  const lines = (text: string, lead = '  ', indent = '  '): string[] =>
    breakLines(bindUnits(text), { width, lead, indent });
  const sheet = options.sheetPath === undefined ? [] : [`  Sheet: ${options.sheetPath}`];
  const tail = [...sheet, ...lines(benchSpoken(unit).join(' '), '  Say: ', '       ')];
  const middle = benchSentences(unit).flatMap((topic) => lines(topic));
  const table = unit.points.length === 0 ? [] : benchTable(unit).map((row) => `  ${row}`);
  return [unit.label, ...middle, ...tail, ...table].map(terminalText);
}

/**
 * What a unit's bench test comes to, a text a topic: loads under which the output was lost, regulation, claims at their worst, where it gives way, changes,
 * energy, doubts. Topics of which nothing is known are left out. Texts must be clean.
 */
export function benchSentences(unit: BenchUnit): readonly string[] {
  return [
    overloadSentence(unit),
    regulationSentence(unit),
    unit.claims.length === 0 ? null : `Claims: ${benchClaimsSentence(unit.claims)}`,
    onsetSentence(unit),
    stepsSentence(unit),
    transfersSentence(unit),
    energySentence(unit),
    unit.notices.length === 0 ? null : `Doubt: ${unit.notices.map(({ message }) => message).join(' ')}`,
  ].filter((topic) => topic !== null);
}

/** Lost ones first. */
function overloadSentence({ overloads = [] }: BenchUnit): string | null {
  const said = [...overloads]
    .sort((a, b) => Number(b.lost) - Number(a.lost))
    .map((one) => overloadPhrase(one) + (one.aboveRating === true ? ' (above its rating)' : ''));
  return said.length === 0 ? null : `${capitalised(said.join('; '))}.`;
}

function regulationSentence({ regulation, droop }: BenchUnit): string {
  const { regulationPercent, noLoadW, fullLoadW } = regulation;
  const first =
    regulationPercent.value === null
      ? `No regulation: ${reasonText(regulationPercent.reason)}.`
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

function stepsSentence({ steps }: BenchUnit): string | null {
  const said = [
    ...steps.map(({ fromW, toW, direction, deviationPercent, recoveryS }) => {
      const load =
        fromW === null || toW === null ? `load ${direction}` : `${decimalText(fromW, 0)} to ${watts(toW)}`;
      const back = recoveryS.value === null ? 'not settled' : `over in ${milliseconds(recoveryS.value, 0)}`;
      return `${load}${deviationPercent.value === null ? '' : ` ${signedPercent(deviationPercent.value)}`}, ${back}`;
    }),
  ];
  const lead = steps.length === 0 ? '' : steps.length === 1 ? 'step ' : 'steps: ';
  return said.length === 0 ? null : `${capitalised(lead + said.join('; '))}.`;
}

/** Earlier documents tell of transfers one by one. */
function transfersSentence({ transfers, transferSides = [], claims }: BenchUnit): string | null {
  const isClaimed = claims.some(({ quantity }) => quantity === 'transferS');
  const said = transferSides.map((side) => capitalised(transferSidePhrase(side, isClaimed)));
  if (said.length > 0) return `${said.join('. ')}.`;
  const times = transfers.flatMap(({ transferS }) =>
    transferS.value === null ? [] : [`${milliseconds(transferS.value, 1)} without voltage`],
  );
  return times.length === 0 ? null : `Transfers: ${times.join('; ')}.`;
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

/** Every claim with its outcome and, unless it holds, its worst case: "“THD < 3 %” fails (5.2 % at 600 W)." */
export function benchClaimsSentence(claims: readonly BenchClaim[]): string {
  return `${claims.map((claim) => `“${shortText(claim.text, 40)}” ${outcomeWords(claim.outcome)}${found(claim)}`).join('; ')}.`;
}

function found(claim: BenchClaim): string {
  if (claim.outcome === 'pass') return '';
  if (claim.reason !== undefined) return ` (${reasonText(claim.reason)})`;
  const load = claim.worstLoadW === null ? '' : ` at ${decimalText(claim.worstLoadW, 0)} W`;
  return ` (${claimValueText(claim).value}${load})`;
}

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
