import { amountText } from '../../base/amountText.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { decimalText } from '../numbers/decimalText.ts';
import { groupedText } from '../numbers/groupedText.ts';
import { significantText } from '../numbers/significantText.ts';
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

/** "100 MS/s", "20 µs": in the unit that people write. */
function rateText(rateHz: number): string {
  return amountText(rateHz, 'S/s', 4);
}

function secondsText(seconds: number): string {
  return amountText(seconds, 's', 4);
}
