import { amountText, rounded } from '../../base/amountText.ts';
import type { LogErrors, LogOptionKey } from '../../energy/log/logErrors.ts';
import { counted, type ErrorWords } from './wording.ts';

const WHAT: Readonly<Record<LogOptionKey, string>> = {
  power: 'the watts',
  volts: 'the volts',
  amps: 'the amperes',
  counter: 'the counter',
  side: 'the side of the inverter',
  timeOrder: 'the order of day and month',
};

export const logWords: ErrorWords<LogErrors> = {
  'log.capture': ({ rows, stepS }) => ({
    message: 'The file is a capture of a wave, not a slow log.',
    expected: 'rows some seconds apart',
    received: `${counted(rows, 'row')}, ${amountText(stepS, 's')} apart`,
    advice: 'measure it as a capture: with the command "measure"',
  }),
  'log.rows': ({ rows, least }) => ({
    message: `The log holds only ${counted(rows, 'row')}.`,
    expected: `at least ${least} rows of readings, each with its time`,
    received: counted(rows, 'row'),
    advice: 'save the log itself, one row a reading, not a summary of it',
  }),
  'log.time': ({ columns, isNumbered }) => ({
    message: 'The log has no time.',
    expected: 'a column of times, or the interval between rows in a line above them',
    received: isNumbered ? `numbered rows of ${columns.join(', ')}` : `columns ${columns.join(', ')}`,
    advice: 'put a line such as "Sample interval,10,s" above the rows, if that is known',
  }),
  'log.time.order': ({ stamp, durationsS: [first, second] }, option) => ({
    message: "The dates don't show whether day or month comes first.",
    expected: 'a day above 12, or rows that follow each other under one order only',
    received: `a first row on ${stamp.slice(0, 10)} with the day first: the log is ${hours(first)} long with the day first, ${hours(second)} with the month first`,
    advice: `tell it with ${option('timeOrder')} day-month or ${option('timeOrder')} month-day`,
  }),
  'log.column.unknown': ({ key, wanted, columns }, option) => ({
    message: `The log has no column "${wanted}" of numbers.`,
    expected: `one of ${columns.join(', ')}`,
    received: wanted,
    advice: `name one of them with ${option(key)}; "column 3" or 3 is the third`,
  }),
  'log.column.choose': ({ key, columns }, option) => ({
    message: `Several columns may hold ${WHAT[key]}.`,
    expected: 'one column of them, or a choice',
    received: columns.join(', '),
    advice: `choose one with ${option(key)} "${columns[0]}"`,
  }),
  'log.quantity': ({ columns, isNamed }, option) => ({
    message: isNamed
      ? 'No column of the log is named as watts, volts and amperes, or a counter.'
      : "The log doesn't name its columns, and their numbers don't tell what they are.",
    expected: 'a column of watts, one of volts and one of amperes, or one that counts Wh',
    received: columns.length === 0 ? 'no column of numbers' : columns.join(', '),
    advice: `name it: ${option('power')} "${columns[0] ?? 'column 2'}", or ${option('volts')} and ${option('amps')}, or ${option('counter')} "NAME=Wh"`,
  }),
  'log.quantity.half': ({ has, columns }, option) => {
    const [is, lacks, key] =
      has === 'volts' ? (['volts', 'amperes', 'amps'] as const) : (['amperes', 'volts', 'volts'] as const);
    return {
      message: `The log has ${is} without ${lacks}: no energy can be made of them.`,
      expected: `a column of ${lacks} too, one of watts, or one that counts Wh`,
      received: columns.join(', '),
      advice: `if one of them holds it, name it with ${option(key)} or ${option('power')}`,
    };
  },
  'log.unit': ({ key, column, most, units }, option) => ({
    message: `The log doesn't say in which unit ${column} stands, and it may be several.`,
    expected: `one of ${units.join(', ')}`,
    received: `numbers up to ${rounded(most, 4)}`,
    advice: `tell it with ${option(key)} "${column}=${units[1] ?? units[0]}"`,
  }),
  'log.side': ({ volts }, option) => ({
    message: "The log doesn't say whether its volts and amperes are AC or DC.",
    expected:
      'watts beside them, or to be told: volts times amperes of AC is no power, for the power factor is missing',
    received: `volts up to ${rounded(volts, 4)}, amperes, and no watts`,
    advice: `tell it with ${option('side')} ac or ${option('side')} dc`,
  }),
};

function hours(seconds: number): string {
  return seconds < 3600 ? `${rounded(seconds / 60, 3)} min` : `${rounded(seconds / 3600, 4)} h`;
}
