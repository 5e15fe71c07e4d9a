import { amountText, rounded } from '../../base/amountText.ts';
import type { LogNotices } from '../../energy/log/notices.ts';
import type { SentencesOf } from './sentences.ts';

/** What a person must know of how an energy log was read. */
export const logged: SentencesOf<LogNotices> = {
  'clock.assumed': ({ column }) =>
    `${column} names no unit of time: seconds are assumed. Check that the duration makes sense.`,
  'clock.back': ({ lines, times }) =>
    `The clock is set back ${times === 1 ? 'once' : `${times} times`} (${linesText(lines, times)}): what comes before and behind is not joined.`,
  'clock.equal': ({ rows, stepS }) =>
    `${rows === 1 ? 'One row has' : `${rows} rows have`} the same time as the row before: they are spread evenly over the ${amountText(stepS, 's')} that the clock tells apart.`,
  'clock.others': ({ used, other, differencePercent }) =>
    `The clocks in the file disagree: ${other.join(' and ')} runs ${rounded(Math.abs(differencePercent), 2)} % ${differencePercent > 0 ? 'longer' : 'shorter'} over the log than ${used.join(' and ')}, which counts.`,
  'clock.rows': ({ intervalS }) =>
    `The rows have no times: each counts as ${rounded(intervalS, 6)} s, as the head says. If the logger was late, or left rows out, the energy is off by as much.`,
  'columns.others': ({ key, first, others }, option) =>
    `${first} is read, the first of ${1 + others.length} such columns; not read: ${others.join(', ')} (${option(key)} NAME).`,
  'columns.unnamed': ({ power, volts, amps, counter }) => {
    const found = [
      ...(power === null ? [] : [`${power} is the power`]),
      ...(volts === null ? [] : [`${volts} the volts`]),
      ...(amps === null ? [] : [`${amps} the amperes`]),
      ...(counter === null ? [] : [`${counter} counts them`]),
    ];
    const why =
      power === null
        ? 'one column counts what flows in another, while a third rises as a battery’s volts do under a charger that holds current or power'
        : 'one column is the product of two others';
    return `The columns have no names. Found by what they are to each other (${why}): ${found.join(', ')}.`;
  },
  'counter.unknown': ({ column }, option) =>
    `${column} counts something, but the file doesn't say in which unit, and it doesn't rise as the power or current does: it is left out (${option('counter')} ${column}=Wh tells it).`,
  'tests.stacked': ({ tests, lines }) =>
    `The file holds ${tests} tests one below the other (the next begins in ${linesText(lines, tests - 1)}): each is taken by itself, as if it had begun when the one before ended.`,
  'units.assumed': ({ columns }) => `The file names no unit. Assumed: ${unitsText(columns)}.`,
  'units.product': ({ columns }) =>
    `The file names no unit. Volts times amperes against the power, and what a bench has, tell: ${unitsText(columns)}.`,
  'units.contradict': ({ columns, times }) =>
    `The units in the file don't fit: the power (${columns[0]?.name}) is ${times} times what ${columns
      .slice(1)
      .map(({ name }) => name)
      .join(' and ')} make. The power counts; check which of them is named wrongly.`,
};

function linesText(lines: readonly number[], all: number): string {
  return `${all === 1 ? 'line' : 'lines'} ${lines.join(', ')}${all > lines.length ? ' …' : ''}`;
}

function unitsText(columns: readonly { readonly name: string; readonly unit: string }[]): string {
  return columns.map(({ name, unit }) => `${name} in ${unit}`).join(', ');
}
