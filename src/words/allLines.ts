import type { NamedBudget } from '../assay/assay.ts';
import type { CurrentFigures, MeasureResult, VoltageFigures } from '../assay/measureDocument.ts';
import type { Finding } from '../judge/limits/findings.ts';
import { contribution } from '../measure/doubt/component.ts';
import type { ChannelUnit } from '../measure/figures.ts';
import { type AnswerOptions, answerLines } from './answerLines.ts';
import { claimValueText, outcomeWords } from './claimWords.ts';
import { stepRows } from './courseWords.ts';
import { figureRows, namedTexts } from './figureRows.ts';
import { findingText, worstFindings } from './limitWords.ts';
import { inputRows, powerRows } from './loadPhrase.ts';
import { decimalText, significantText, withUnit } from './numbers.ts';
import { figureText } from './quantities.ts';
import { captureLines, rankNotices } from './rankNotices.ts';
import { alignColumns, cleanTexts, terminalText } from './text.ts';

/** Everything a result holds, for `--all`: the fourteen lines, then every figure, harmonic, finding and notice. */
export function allLines(result: MeasureResult, options: AnswerOptions = {}): readonly string[] {
  const clean = cleanTexts(result);
  const { voltage, current, power, loadKind, input, waveform, claims, notices, sha256 } = clean;
  return [
    ...answerLines(clean, options),
    ...section('Waveform', [[waveform.kind], ...waveform.reasons.map((reason) => [reason])]),
    ...(voltage === undefined ? [] : channelSections('Voltage', voltage, 'V')),
    ...(current === undefined ? [] : channelSections('Current', current, 'A')),
    ...(power === undefined
      ? []
      : section(`Power (IEEE 1459), current in ${power.channel}`, namedTexts(powerRows(power)))),
    ...clean.steps.flatMap((step, i) => section(`Load step ${i + 1}`, stepRows(step))),
    ...(input === undefined
      ? []
      : section(
          `DC input, ${input.voltageChannel} and ${input.currentChannel}`,
          namedTexts(inputRows(input)),
        )),
    ...(loadKind === undefined
      ? []
      : section('Kind of load', [[loadKind.kind], ...loadKind.reasons.map((reason) => [reason])])),
    ...section(
      'Claims',
      claims.map((claim) => [claim.text, outcomeWords(claim.outcome), claimValueText(claim).named]),
    ),
    ...section('Against reference limits, worst first', worstFindings(clean.findings).map(findingRow)),
    ...section(
      'Notices, worst first',
      rankNotices(notices).map(({ code, message }) => [code, message]),
    ),
    ...section('Capture', [...captureLines(clean).map((line) => [line]), [`SHA-256 ${sha256}`]]),
  ].map(terminalText);
}

function channelSections(
  quantity: string,
  figures: VoltageFigures | CurrentFigures,
  unit: ChannelUnit,
): string[] {
  const harmonics = figures.harmonics.map((harmonic) => [
    String(harmonic.order),
    decimalText('rmsV' in harmonic ? harmonic.rmsV : harmonic.rmsA, 4),
    decimalText(harmonic.percent, 3),
    decimalText(harmonic.phaseDeg, 1),
  ]);
  const header = ['order', unit, '% of fundamental', 'phase (°)'];
  return [
    ...section(`${quantity}, channel ${figures.channel}`, namedTexts(figureRows(figures, unit))),
    ...section(`${quantity} harmonics`, harmonics.length === 0 ? [] : [header, ...harmonics], 'right'),
  ];
}

function findingRow(finding: Finding): string[] {
  const text = findingText(finding);
  const words = finding.outcome === 'information' ? 'for information' : outcomeWords(finding.outcome);
  return [
    text.name,
    text.value,
    `${text.limitName.toLowerCase()} ${text.limit}`,
    text.margin,
    words,
    text.source,
    finding.remark ?? '',
  ];
}

/** A heading and its rows in columns; nothing where there is no row. */
function section(
  heading: string,
  rows: readonly (readonly string[])[],
  side: 'left' | 'right' = 'left',
): string[] {
  return rows.length === 0 ? [] : ['', heading, ...alignColumns(rows, side).map((line) => `  ${line}`)];
}

/**
 * The uncertainty budgets in columns: for each figure its influences, the largest first, with type,
 * distribution, standard uncertainty, sensitivity and contribution.
 */
export function budgetLines(budgets: readonly Omit<NamedBudget, 'key'>[]): readonly string[] {
  const heading = ['', 'type', 'distribution', 'u', 'sensitivity', 'contributes'];
  return budgets.flatMap(({ figure, unit, value, uncertainty, budget }) => {
    const number = (x: number, of: string): string => withUnit(significantText(x, 2), of);
    const rows = budget.components.map((component) => [
      component.source,
      component.type,
      component.distribution,
      number(component.standardUncertainty, component.unit === 'U' ? unit : component.unit),
      significantText(component.sensitivity, 2),
      number(contribution(component), unit),
    ]);
    const degrees = budget.effectiveDegreesOfFreedom;
    const coverage = `k = ${budget.coverageFactor.toFixed(2)}, ${
      Number.isFinite(degrees)
        ? `${Math.floor(degrees)} effective degrees of freedom`
        : 'degrees of freedom: many'
    }`;
    return [
      '',
      `${figure}: ${figureText({ value, uncertainty }, unit)} (${coverage})`,
      ...alignColumns([heading, ...rows]).map((line) => `  ${line}`),
    ].map(terminalText);
  });
}

/** Each window of 10 or 12 cycles: when it starts, its fundamental, and the three distortions of IEC 61000-4-7. */
export function windowLines({ voltage, current }: MeasureResult): readonly string[] {
  const unit = voltage === undefined ? 'A' : 'V';
  const groups = voltage?.harmonicGroups ?? current?.harmonicGroups;
  if (groups === undefined) {
    return ['', 'Windows: none, the record is shorter than 10 cycles (12 at 60 Hz).'];
  }
  const rows = (groups.perWindow ?? []).map((window) => {
    const fundamental = 'fundamentalRmsV' in window ? window.fundamentalRmsV : window.fundamentalRmsA;
    return [
      `${significantText(window.startS, 6)} s`,
      `${significantText(fundamental, 6)} ${unit}`,
      ...[window.thdPercent, window.thdGroupsPercent, window.thdSubgroupsPercent].map(
        (x) => `${significantText(x, 4)} %`,
      ),
    ];
  });
  return [
    '',
    `Windows: ${groups.extent}`,
    ...alignColumns([['start', 'fundamental', 'THD', 'THDG', 'THDS'], ...rows], 'right').map(
      (line) => `  ${line}`,
    ),
  ].map(terminalText);
}
