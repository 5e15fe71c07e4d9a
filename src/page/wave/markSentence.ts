import { significantText, withUnit } from '../../entry/sections.ts';
import { type TimeUnit, timeText } from './timeUnit.ts';

/** A place on the wave that a person marked. */
export interface Mark {
  readonly timeS: number;
  /** Null where the file holds none. */
  readonly value: number | null;
}

/** What lies between two marks, in a sentence; with one mark or none, what to do. */
export function markSentence(marks: readonly Mark[], unit: string, time: TimeUnit): string {
  const [a, b] = [...marks].sort((one, other) => one.timeS - other.timeS);
  if (a === undefined) return 'Click the wave at two places, or type their times, to read what lies between.';
  const place = ({ timeS, value }: Mark): string =>
    `${timeText(timeS, time)}${value === null ? '' : ` (${valueText(value, unit)})`}`;
  if (b === undefined) return `One mark at ${place(a)}; a second one is wanted.`;
  const apart = b.timeS - a.timeS;
  const turn = apart > 0 ? `, the time of one turn at ${Number((1 / apart).toPrecision(5))}\u00a0Hz` : '';
  const change =
    a.value === null || b.value === null
      ? ''
      : a.value === b.value
        ? ', and the same value'
        : `, and ${valueText(Math.abs(b.value - a.value), unit)} ${b.value > a.value ? 'higher' : 'lower'}`;
  return `From ${place(a)} to ${place(b)}: ${timeText(apart, time)}${turn}${change}.`;
}

function valueText(value: number, unit: string): string {
  return withUnit(significantText(value, 4).replace('-', '−'), unit);
}
