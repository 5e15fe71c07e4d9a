import { counterShape, unknownCounter } from './counters.ts';
import type { FileColumn } from './fileColumns.ts';
import { logError } from './logErrors.ts';
import type { Flows } from './readings.ts';

/** Why no energy can be made of the columns, with what to tell. */
export function nothingFound(
  columns: readonly FileColumn[],
  flows: Flows,
  isNamed: boolean,
  hasModes: boolean,
): Error {
  const readable = columns.filter(({ numbers, countsUp }) => numbers !== null && !countsUp);
  const names = readable.map(({ shown }) => shown);
  if (flows.volts !== null) return logError('log.quantity.half', { has: 'volts', columns: names });
  if (flows.amps !== null) return logError('log.quantity.half', { has: 'amps', columns: names });
  // Beside the modes of a battery, a column that goes down and up with them says what is left in it.
  const levels = isNamed || !hasModes ? [] : readable.filter(({ numbers }) => isLevel(numbers!));
  return levels.length === 1
    ? unknownCounter(levels[0]!)
    : logError('log.quantity', { columns: names, isNamed });
}

function isLevel(numbers: Float64Array): boolean {
  return counterShape(numbers)?.kind === 'remaining';
}
