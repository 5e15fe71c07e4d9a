import type { FoundClock } from './clock.ts';
import type { FoundCounter } from './counters.ts';
import type { LogQuantity, NamedColumn } from './energyLog.ts';
import type { FileColumn } from './fileColumns.ts';
import type { FlowUnits } from './flowUnits.ts';
import type { Flows, Reading } from './readings.ts';

/** What each column of the file is taken for. */
export function namedColumns(
  columns: readonly FileColumn[],
  clock: FoundClock,
  flows: Flows,
  units: FlowUnits,
  counters: readonly FoundCounter[],
  modes: FileColumn | null,
): NamedColumn[] {
  return columns.map((column): NamedColumn => {
    const is = (reading: Reading | null): boolean => isColumn(reading?.column, column);
    const counter = counters.find((one) => isColumn(one.column, column));
    const [quantity, unit]: [LogQuantity, string] = clock.columns.includes(column)
      ? ['time', column.name.unit?.symbol ?? '']
      : is(flows.power)
        ? ['power', units.power!.symbol]
        : is(flows.volts)
          ? ['voltage', units.volts!.symbol]
          : is(flows.amps)
            ? ['current', units.amps!.symbol]
            : counter !== undefined
              ? [counter.quantity, counter.unit.symbol]
              : isColumn(modes ?? undefined, column)
                ? ['mode', '']
                : restQuantity(column);
    return { name: column.shown, quantity, unit };
  });
}

/** The same column of the file, with all its rows or some. */
function isColumn(one: FileColumn | undefined, other: FileColumn): boolean {
  return one !== undefined && one.index === other.index && one.shown === other.shown;
}

function restQuantity({ name, countsUp, words }: FileColumn): [LogQuantity, string] {
  if (countsUp && name.quantity !== 'time') return ['row number', ''];
  if (words !== null && name.quantity !== 'metric' && name.quantity !== 'mode') return ['other', ''];
  return [name.quantity ?? 'other', name.unit?.symbol ?? ''];
}
