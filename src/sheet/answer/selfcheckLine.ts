import type { CheckedCapture, CheckedFigure } from '../../verdict/selfcheck/selfcheck.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { terminalText } from './terminalText.ts';

/** One capture of a selfcheck in a line: its kind, and each figure's error over what it claims. */
export function selfcheckLine(capture: CheckedCapture): string {
  const { wave, sampleRateHz, cycles, bits, kind, figures, holds } = capture;
  const setting = `${wave}, ${sampleRateHz / 1000} kS/s, ${cycles} cycles, ${bits} bits`;
  const shares = figures.map(shareText).join('  ');
  const wrong = kind.found === kind.truth ? '' : `  told as ${kind.found}, is ${kind.truth}`;
  return terminalText(`${holds ? 'inside ' : 'OUTSIDE'} ${setting.padEnd(54)} ${shares}${wrong}`);
}

function shareText({ figure, unit, truth, found, uncertainty }: CheckedFigure): string {
  const error = significantText(found - truth, 2);
  return `${figure} ${error} of ±${withUnit(significantText(uncertainty, 2), unit)}`;
}
