import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { decimalText } from '../numbers/decimalText.ts';
import { groupedText } from '../numbers/groupedText.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { mainFigures } from './mainFigures.ts';

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

function rateText(rateHz: number): string {
  if (rateHz >= 1e6) return withUnit(significantText(rateHz / 1e6, 4), 'MS/s');
  return rateHz >= 1e3
    ? withUnit(significantText(rateHz / 1e3, 4), 'kS/s')
    : withUnit(significantText(rateHz, 4), 'S/s');
}

function secondsText(seconds: number): string {
  return Math.abs(seconds) < 1
    ? withUnit(significantText(seconds * 1e3, 4), 'ms')
    : withUnit(significantText(seconds, 4), 's');
}
