import { noBreakSpace } from '../numbers/withUnit.ts';

/**
 * A line for a terminal: no-break spaces, which have done their work once lines are broken, become plain
 * ones, so that "120 V" is found when somebody searches the output for it.
 */
export function terminalText(line: string): string {
  return line.replaceAll(noBreakSpace, ' ').trimEnd();
}
