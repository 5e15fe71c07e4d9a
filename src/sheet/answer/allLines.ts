import type {
  CurrentFigures,
  Finding,
  MeasureResult,
  VoltageFigures,
} from '../../verdict/measureDocument.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { decimalText } from '../numbers/decimalText.ts';
import { alignColumns } from './alignColumns.ts';
import { type AnswerOptions, answerLines } from './answerLines.ts';
import { captureLines } from './captureLines.ts';
import { claimValueText } from './claimValueText.ts';
import { figureRows } from './figureRows.ts';
import { findingText } from './findingText.ts';
import { namedTexts } from './namedFigure.ts';
import { outcomeWords } from './outcomeWords.ts';
import { inputRows, powerRows } from './powerRows.ts';
import { rankNotices } from './rankNotices.ts';
import { stepRows } from './stepRows.ts';
import { terminalText } from './terminalText.ts';
import { worstFindings } from './worstFindings.ts';

/** Everything a result holds, for `--all`: the fourteen lines, then every figure, harmonic, finding and notice. */
export function allLines(result: MeasureResult, options: AnswerOptions = {}): readonly string[] {
  const clean = cleanTexts(result);
  const { voltage, current, power, loadKind, input, waveform, claims, notices, sha256 } = clean;
  return [
    ...answerLines(clean, options),
    ...section('Waveform', [[waveform.kind], ...waveform.reasons.map((reason) => [reason])]),
    ...(voltage === undefined ? [] : channelSections('Voltage', voltage)),
    ...(current === undefined ? [] : channelSections('Current', current)),
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

function channelSections(quantity: string, figures: VoltageFigures | CurrentFigures): string[] {
  const unit = 'rmsV' in figures ? 'V' : 'A';
  const harmonics = figures.harmonics.map((harmonic) => [
    String(harmonic.order),
    decimalText('rmsV' in harmonic ? harmonic.rmsV : harmonic.rmsA, 4),
    decimalText(harmonic.percent, 3),
    decimalText(harmonic.phaseDeg, 1),
  ]);
  const header = ['order', unit, '% of fundamental', 'phase (°)'];
  return [
    ...section(`${quantity}, channel ${figures.channel}`, namedTexts(figureRows(figures))),
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
