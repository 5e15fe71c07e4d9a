import type { FailedResult, MeasureResult } from '../assay/measureDocument.ts';
import { amountText } from '../base/amountText.ts';
import type { Notice } from '../base/notice.ts';
import { mainFigures } from './figureRows.ts';
import { decimalText, groupedText, significantText } from './numbers.ts';
import { capitalised, cleanTexts, terminalText } from './text.ts';

/** What may make every figure wrong, by its code, worst first. */
const grave: readonly RegExp[] = [
  /^channels?\.(?!others|currents|currentOnly|unmeasured)/,
  /^scale\./,
  /^dc\./,
  /^wave\.(clipped|overRange)$|^digitiser\.clipped$/,
  /^frequency\./,
  /^time\.(disagrees|contradicts)/,
];

/** Then what makes some of them unsure, then what was merely assumed or left out. */
const others: readonly RegExp[] = [
  /^load\.|^current\.|^power\./,
  /^value\./,
  /^kind\./,
  /^time\.(assumed|uneven)/,
  /^unit\./,
  /gap/,
  /^wave\.drifts$|^span\./,
  /^cycles\./,
  /^rate\./,
  /^resolution\./,
  /^coupling\./,
  /^nominal\./,
  /^time\./,
  /^rows\./,
];

const worstFirst = [...grave, ...others];

/** Whether a doubt may make every figure wrong: such a one is told wherever a figure is shown. */
export function isGrave({ code }: Notice): boolean {
  return grave.some((topic) => topic.test(code));
}

/** Notices, worst first; those of one rank, and those whose topic is unknown, keep their order (the latter last). */
export function rankNotices(notices: readonly Notice[]): Notice[] {
  const rank = ({ code }: Notice): number => {
    const index = worstFirst.findIndex((topic) => topic.test(code));
    return index < 0 ? worstFirst.length : index;
  };
  return [...notices].sort((a, b) => rank(a) - rank(b));
}

/**
 * A file that could not be measured, in one line: where, what is wrong, what was expected and found, what to do.
 *
 * "kettle.csv, line 12, column 3: not a number; expected a voltage, found “abc”. Save the waveform as CSV."
 */
export function failureLine(failed: FailedResult): string {
  const { file, error } = cleanTexts(failed);
  const { message, line, column, expected, received, advice } = error;
  const place = [
    file,
    ...(line === undefined ? [] : [`line ${line}`]),
    ...(column === undefined ? [] : [`column ${column}`]),
  ].join(', ');
  const comparison = [
    ...(expected === undefined ? [] : [`expected ${expected}`]),
    ...(received === undefined ? [] : [`found ${received}`]),
  ].join(', ');
  const wrong = comparison === '' ? sentence(message) : `${bare(message)}; ${sentence(comparison)}`;
  return terminalText(`${place}: ${wrong}${advice === undefined ? '' : ` ${sentence(capitalised(advice))}`}`);
}

function bare(text: string): string {
  return text.replace(/\.$/, '');
}

/** With a full stop where none is. */
function sentence(text: string): string {
  return /[.!?…]$/.test(text) ? text : `${text}.`;
}

/** The capture in a few lines: what was recorded, which stretch and channel were measured, at which scale. */
export function captureLines(result: MeasureResult): string[] {
  const { capture } = result;
  const bits = capture.bits === null ? '' : `, ${decimalText(capture.bits, 0)} bits`;
  const lines = [
    `Record: ${groupedText(capture.samples)} samples at ${rateText(capture.sampleRateHz)}, ${secondsText(capture.durationS)}${bits}. Layout: ${capture.layout}.`,
  ];
  const figures = mainFigures(result);
  if (figures === null) return lines;
  const channel = capture.channels.find(({ name }) => name === figures.channel);
  const scale = channel === undefined ? '' : `, scale ×${significantText(channel.scale, 6)}`;
  const [from, to] = figures.spanS;
  lines.push(
    `Measured: channel ${figures.channel}${scale}, from ${secondsText(from)} to ${secondsText(to)}, ${significantText(figures.cyclesUsed, 3)} cycles.`,
  );
  return lines;
}

/** "100 MS/s", "20 µs": in the unit that people write. */
function rateText(rateHz: number): string {
  return amountText(rateHz, 'S/s', 4);
}

function secondsText(seconds: number): string {
  return amountText(seconds, 's', 4);
}
