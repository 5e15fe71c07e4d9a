import type { LogLayout } from '../../energy/log/logLayout.ts';

const delimiters: Readonly<Record<LogLayout['delimiter'], string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'bars',
  blanks: 'blanks',
};

/** How a log is written, as a phrase: "all readings of a time in a row, names above them, split by commas, …". */
export function layoutWords({ rowsAre, isNamed, delimiter, clock, tests, metric }: LogLayout): string {
  return [
    rowsAre === 'long' ? 'one value a row with the name of its metric' : 'all readings of a time in a row',
    isNamed ? 'names above them' : 'no names',
    `split by ${delimiters[delimiter]}`,
    clock === null ? 'no clock: rows are counted' : `time as ${clock.written}`,
    ...(tests > 1 ? [`${tests} tests one below the other`] : []),
    ...(metric === null ? [] : [`read: ${metric}`]),
  ].join(', ');
}
