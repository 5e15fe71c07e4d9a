import type { EnergyLog, LogColumn } from './energyLog.ts';
import type { FileColumn } from './fileColumns.ts';
import { sizeOf } from './flowUnits.ts';
import type { Flows } from './readings.ts';

const MAINS_FROM_V = 85;
const MAINS_TO_V = 265;

export function isMainsVoltage({ values }: LogColumn): boolean {
  const size = sizeOf(values);
  return size >= MAINS_FROM_V && size <= MAINS_TO_V;
}

/** Of volts times amperes: a power that is less is that of AC. */
const APPARENT = 0.97;

/** Which side of the inverter a log is from, as far as it shows. */
export function sideOf(
  columns: readonly FileColumn[],
  flows: Flows,
  values: Readonly<Record<'volts' | 'amps' | 'watts', LogColumn | null>> | null,
): EnergyLog['side'] {
  const named = [flows.power, flows.volts, flows.amps].flatMap((one) => one?.column.name.side ?? []);
  if (named.length > 0 && named.every((side) => side === named[0])) return named[0]!;
  if (columns.some(({ name }) => name.quantity === 'power factor' || name.quantity === 'apparent power'))
    return 'ac';
  if (values?.volts == null) return null;
  const { volts, amps, watts } = values;
  if (!isMainsVoltage(volts)) return sizeOf(volts.values) < MAINS_FROM_V ? 'dc' : null;
  if (columns.some(({ name }) => name.quantity === 'frequency')) return 'ac';
  if (amps === null || watts === null) return null;
  let [real, apparent] = [0, 0];
  for (let row = 0; row < volts.values.length; row++) {
    const product = Math.abs(volts.values[row]! * amps.values[row]!);
    if (Number.isNaN(product) || Number.isNaN(watts.values[row]!)) continue;
    apparent += product;
    real += Math.abs(watts.values[row]!);
  }
  return apparent > 0 && real < APPARENT * apparent ? 'ac' : null;
}
