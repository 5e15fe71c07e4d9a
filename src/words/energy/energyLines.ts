import type { Figure } from '../../base/figure.ts';
import { logClaimUnit } from '../../energy/claims/logClaim.ts';
import type { EnergyResult, RunResult, TogetherResult } from '../../energy/energyDocument.ts';
import type { ClaimResult } from '../../judge/claims/claim.ts';
import type { Limit } from '../../judge/decide.ts';
import { outcomeWords, quoted } from '../claimWords.ts';
import { breakLines } from '../courseWords.ts';
import { bindUnits, decimalText, groupedText, significantText, withUnit } from '../numbers.ts';
import { besideLimit, figureText } from '../quantities.ts';
import { rankNotices } from '../rankNotices.ts';
import { reasonText } from '../reasons.ts';
import { alignColumns, capitalised, cleanTexts, shortText, terminalText } from '../text.ts';

interface EnergyLinesOptions {
  /** Characters a line; default 80, at least 40. */
  readonly width?: number;
  /** Every run, hole, counter and column as well. */
  readonly all?: boolean;
}

type Run = RunResult<Figure<string>>;

/** A log's answer for the terminal: what flowed, for how long, what of the rating that is; claims; what to doubt. */
export function energyLines(told: EnergyResult, options: EnergyLinesOptions = {}): readonly string[] {
  const result = cleanTexts(told);
  const width = Math.max(options.width ?? 80, 40);
  const lines = (text: string): string[] => breakLines(bindUnits(text), { width, lead: '  ', indent: '  ' });
  const label = result.label === undefined ? '' : ` (${shortText(result.label, 40)})`;
  return [
    shortText(result.file, width - [...label].length, 'start') + label,
    ...energySentences(result).flatMap(lines),
    ...(options.all ? everything(result) : []),
  ].map(terminalText);
}

/** What a log comes to, a text a topic; its texts must be clean. */
function energySentences(result: EnergyResult): readonly string[] {
  const { claims, notices } = result;
  const doubts = rankNotices(notices).map(({ message }) => message);
  return [
    ...mainSentences(result),
    shareSentence(result),
    counterSentence(result),
    gapSentence(result),
    claims.length === 0 ? null : `Claims: ${logClaimsSentence(claims)}`,
    doubts.length === 0 ? null : `Doubt: ${doubts.join(' ')}`,
  ].filter((sentence) => sentence !== null);
}

/** Of two logs that belong together. */
export function togetherSentence({
  conversionEfficiencyPercent,
  roundTripPercent,
}: TogetherResult<Figure<string>>): string {
  const one = (name: string, figure: Figure | undefined): string[] =>
    figure === undefined
      ? []
      : [
          figure.value === null
            ? `No ${name}: ${figure.reason}`
            : `${capitalised(name)} ${figureText(figure, '%')}`,
        ];
  return `${[...one('conversion efficiency', conversionEfficiencyPercent), ...one('round trip', roundTripPercent)].join('. ')}.`;
}

function mainSentences({ runs }: EnergyResult): readonly string[] {
  const largest = (kind: Run['kind']): Run | undefined =>
    runs.filter((run) => run.kind === kind).sort((a, b) => sizeOf(b) - sizeOf(a))[0];
  const [discharge, charge, cycling, idle] = (['discharge', 'charge', 'cycling', 'idle'] as const).map(
    largest,
  );
  const said = [
    discharge === undefined ? null : loadSentence('Discharge', discharge, countOf(runs, 'discharge')),
    charge === undefined
      ? null
      : `${loadSentence('Charge', charge, countOf(runs, 'charge'))}${phases(charge)}`,
    cycling === undefined ? null : cyclingSentence(cycling),
    idle === undefined ? null : idleSentence(idle),
  ].filter((sentence) => sentence !== null);
  return said.length === 0 ? ['Nothing flows in this log.'] : said;
}

function sizeOf({ energyWh, chargeAh, durationS }: Run): number {
  return energyWh.value ?? chargeAh.value ?? durationS.value ?? 0;
}

function countOf(runs: readonly Run[], kind: Run['kind']): number {
  return runs.filter((run) => run.kind === kind).length;
}

function loadSentence(name: string, run: Run, count: number): string {
  const { energyWh, chargeAh, durationS, meanPowerW, maxPowerW, startVoltageV, endVoltageV } = run;
  const what =
    energyWh.value !== null
      ? `${figureText(energyWh, 'Wh')}${chargeAh.value === null ? '' : ` (${figureText(chargeAh, 'Ah')})`}`
      : chargeAh.value !== null
        ? `${figureText(chargeAh, 'Ah')}; no energy: ${energyWh.reason}`
        : `no energy: ${energyWh.reason}`;
  const power =
    meanPowerW.value === null
      ? ''
      : `, ${figureText(meanPowerW, 'W')} on average${maxPowerW.value === null ? '' : `, ${shortNumber(maxPowerW.value)} W at most`}`;
  const volts =
    startVoltageV.value === null || endVoltageV.value === null
      ? ''
      : `, from ${figureText(startVoltageV, 'V')} to ${figureText(endVoltageV, 'V')} under load`;
  const which = count === 1 ? name : `${name}, the largest of ${count}`;
  if (energyWh.value === null && chargeAh.value === null)
    return `${which} of ${spanText(durationS.value ?? 0)}; no energy: ${energyWh.reason}.`;
  return `${which}: ${what} in ${spanText(durationS.value ?? 0)}${power}${volts}.`;
}

function phases({ charge }: Run): string {
  if (charge === undefined) return '';
  const { ccS, cvS, to80S, toFullS } = charge;
  const said = [
    ccS.value === null ? null : `${spanText(ccS.value)} at constant current`,
    cvS.value === null || cvS.value === 0 ? null : `${spanText(cvS.value)} at constant voltage`,
    to80S.value === null ? null : `80 % of its energy after ${spanText(to80S.value)}`,
    toFullS.value === null ? toFullS.reason : null,
  ].filter((part) => part !== null);
  return said.length === 0 ? '' : ` ${capitalised(said.join(', '))}.`;
}

function cyclingSentence({ cycle, durationS, energyWh }: Run): string {
  const { periodS, onPercent, lostWh } = cycle!;
  const lost = lostWh.value === null ? '' : `, ${figureText(lostWh, 'Wh')} less than steady power would give`;
  return `Comes and goes every ${figureText(periodS, 's')} for ${spanText(durationS.value ?? 0)}: on for ${figureText(onPercent, '%')} of the time, ${figureText(energyWh, 'Wh')}${lost}.`;
}

function idleSentence({ idle, meanPowerW }: Run): string {
  const { emptiesInH, autoOffAfterS } = idle!;
  const empties = emptiesInH.value === null ? '' : `, which empties it in ${figureText(emptiesInH, 'h')}`;
  const off =
    autoOffAfterS.value === null ? '' : `; it switches itself off after ${spanText(autoOffAfterS.value)}`;
  return `Idle: ${figureText(meanPowerW, 'W')}${empties}${off}.`;
}

function shareSentence({ ratios }: EnergyResult): string | null {
  const named = [
    ['usable share', ratios.usableSharePercent],
    ['outlet share', ratios.outletSharePercent],
    ['usable share of the rated charge', ratios.usableChargeSharePercent],
    ['round trip', ratios.roundTripPercent],
  ] as const;
  const said = named.flatMap(([name, figure]) =>
    figure === undefined
      ? []
      : [figure.value === null ? `no ${name}: ${figure.reason}` : `${name} ${figureText(figure, '%')}`],
  );
  return said.length === 0 ? null : `${capitalised(said.join('; '))}.`;
}

function counterSentence({ counters }: EnergyResult): string | null {
  const said = counters.flatMap(({ name, energyWh, chargeAh, ratioPercent }) => {
    const shown =
      energyWh.value !== null
        ? figureText(energyWh, 'Wh')
        : chargeAh === undefined
          ? null
          : figureText(chargeAh, 'Ah');
    if (shown === null || ratioPercent.value === null) return [];
    return [`${shortText(name, 30)} ${shown}, ${decimalText(ratioPercent.value, 1)} % of ours`];
  });
  return said.length === 0 ? null : `The log's own count: ${said.join('; ')}.`;
}

function gapSentence({ gaps }: EnergyResult): string | null {
  if (gaps.length === 0) return null;
  const min = gaps.reduce((sum, { energyWh }) => sum + (energyWh.min ?? 0), 0);
  const max = gaps.reduce((sum, { energyWh }) => sum + (energyWh.max ?? 0), 0);
  const hours = gaps.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);
  return `${gaps.length === 1 ? 'A hole' : `${gaps.length} holes`} of ${spanText(hours)}${gaps.length === 1 ? '' : ' in all'}: ${shortNumber(min)} to ${shortNumber(max)} Wh may have flowed there.`;
}

/** Every claim with its outcome and what was found: "“runtime > 4 h” fails (3 h 52 min)." */
function logClaimsSentence(claims: readonly ClaimResult[]): string {
  const said = claims.map((claim) => {
    const found = foundText(claim);
    return `${quoted(claim)} ${outcomeWords(claim.outcome)}${found === '' ? '' : ` (${found})`}`;
  });
  return `${said.join('; ')}.`;
}

function foundText({ quantity, value, limit, outcome, reason }: ClaimResult): string {
  if (value === null || outcome === 'not judged')
    return reason === undefined ? 'nothing measured' : reasonText(reason);
  const found = typeof value === 'string' ? value : valueText(quantity, value, limit ?? {});
  return reason === undefined ? found : `${found}; ${reasonText(reason)}`;
}

function valueText(quantity: string, value: number, limit: Limit): string {
  const unit = logClaimUnit(quantity);
  return unit === 's' ? spanText(value) : withUnit(besideLimit(value, limit), unit ?? '');
}

/** "38 s", "52 min", "4 h 12 min", "3 d 2 h". */
function spanText(seconds: number): string {
  if (seconds < 120) return withUnit(significantText(seconds, 3), 's');
  const minutes = Math.round(seconds / 60);
  if (minutes < 120) return withUnit(String(minutes), 'min');
  const hours = Math.floor(minutes / 60);
  if (hours < 72)
    return `${withUnit(String(hours), 'h')}${minutes % 60 === 0 ? '' : ` ${withUnit(String(minutes % 60), 'min')}`}`;
  const days = Math.floor(hours / 24);
  return `${withUnit(String(days), 'd')}${hours % 24 === 0 ? '' : ` ${withUnit(String(hours % 24), 'h')}`}`;
}

function shortNumber(value: number): string {
  return significantText(value, 4);
}

/** Every run, hole, counter and column, for `--all`. */
function everything({ runs, gaps, log, counters, notices, sha256 }: EnergyResult): readonly string[] {
  const cell = (figure: Figure, unit: string): string =>
    figure.value === null ? '–' : figureText(figure, unit);
  const head = ['run', 'from', 'to', 'time', 'energy', 'charge', 'mean power', 'volts'];
  const rows = runs.map((run) => [
    run.kind,
    withUnit(groupedText(Math.round(run.fromS)), 's'),
    withUnit(groupedText(Math.round(run.toS)), 's'),
    spanText(run.durationS.value ?? 0),
    cell(run.energyWh, 'Wh'),
    cell(run.chargeAh, 'Ah'),
    cell(run.meanPowerW, 'W'),
    cell(run.meanVoltageV, 'V'),
  ]);
  const section = (heading: string, of: readonly (readonly string[])[]): readonly string[] =>
    of.length === 0 ? [] : ['', heading, ...alignColumns(of).map((line) => `  ${line}`)];
  return [
    ...section('Runs', [head, ...rows]),
    ...section(
      'Holes',
      gaps.map(({ fromS, toS, energyWh }) => [
        `${groupedText(Math.round(fromS))} s`,
        `${groupedText(Math.round(toS))} s`,
        energyWh.min === null || energyWh.max === null
          ? 'energy not known'
          : `${shortNumber(energyWh.min)} to ${shortNumber(energyWh.max)} Wh`,
      ]),
    ),
    ...section(
      'Counters',
      counters.map(({ name, energyWh, chargeAh, ratioPercent }) => [
        name,
        chargeAh === undefined ? cell(energyWh, 'Wh') : cell(chargeAh, 'Ah'),
        `${cell(ratioPercent, '%')} of ours`,
      ]),
    ),
    ...section(
      'Columns',
      log.columns.map(({ name, quantity, unit }) => [name, quantity, unit]),
    ),
    ...section(
      'Notices',
      notices.map(({ code, message }) => [code, message]),
    ),
    '',
    `Log: ${groupedText(log.rows)} rows over ${spanText(log.durationS)}. Layout: ${log.layout}.`,
    `SHA-256 ${sha256}`,
  ];
}
