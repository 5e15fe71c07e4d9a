import type { FailedResult } from '../../verdict/measureDocument.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { capitalised } from './capitalised.ts';
import { terminalText } from './terminalText.ts';

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
