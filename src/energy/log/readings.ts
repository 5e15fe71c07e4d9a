import { decimalExponent } from '../../base/elementary.ts';
import { median } from '../../signal/statistics.ts';
import type { FileColumn } from './fileColumns.ts';
import { type FlowKey, type LogOptionKey, logError } from './logErrors.ts';
import { type LogUnit, logUnit, scaledUnit } from './logUnits.ts';
import type { LogNotice } from './notices.ts';

/** A column that is read, with the unit of its numbers; null: nobody says, and it is still to be found. */
export interface Reading {
  readonly column: FileColumn;
  readonly unit: LogUnit | null;
}

export type Flows = { readonly [Key in FlowKey]: Reading | null };

const QUANTITY = { power: 'power', volts: 'voltage', amps: 'current' } as const;

export interface ToldColumns {
  readonly power?: string;
  readonly volts?: string;
  readonly amps?: string;
  readonly counter?: string;
  readonly side?: 'ac' | 'dc';
}

/**
 * The columns of volts, amperes and watts: told, or named by the file.
 *
 * @throws MeasureError `log.column.unknown` where a told one isn't there; `log.column.choose` where the answer depends
 * on which of several it is.
 */
export function namedFlows(
  columns: readonly FileColumn[],
  told: ToldColumns,
): { readonly flows: Flows; readonly notices: readonly LogNotice[] } {
  const notices: LogNotice[] = [];
  const candidates = (key: FlowKey): readonly FileColumn[] => {
    const wanted = told[key];
    if (wanted !== undefined) return [toldColumn(columns, key, wanted).column];
    return likely(
      columns.filter(({ name, numbers }) => numbers !== null && name.quantity === QUANTITY[key]),
      told.side,
    );
  };
  const found = { power: candidates('power'), volts: candidates('volts'), amps: candidates('amps') };
  const chosen = chosenByProduct(found);
  const choose = (key: FlowKey, isNeeded: boolean): Reading | null => {
    const [first, ...others] = chosen[key];
    if (first === undefined) return null;
    if (others.length > 0) {
      const names = chosen[key].map(({ shown }) => shown);
      if (isNeeded) throw logError('log.column.choose', { key, columns: names });
      notices.push({ code: 'columns.others', key, first: first.shown, others: names.slice(1) });
    }
    const wanted = told[key];
    return {
      column: first,
      unit:
        (wanted === undefined ? null : toldColumn(columns, key, wanted).unit) ??
        ownUnit(first, QUANTITY[key]),
    };
  };
  const power = choose('power', true);
  const isNeeded = power === null;
  return { flows: { power, volts: choose('volts', isNeeded), amps: choose('amps', isNeeded) }, notices };
}

function ownUnit({ name }: FileColumn, quantity: (typeof QUANTITY)[FlowKey]): LogUnit | null {
  return name.unit?.quantity === quantity ? name.unit : null;
}

/** Those that hold anything, of the side told, no means where there are plain readings, no copies. */
function likely(columns: readonly FileColumn[], side: 'ac' | 'dc' | undefined): readonly FileColumn[] {
  const narrowed = [
    (column: FileColumn) => column.numbers!.some((value) => value !== 0 && !Number.isNaN(value)),
    (column: FileColumn) => side === undefined || column.name.side === side,
    (column: FileColumn) => !column.name.isMean,
  ].reduce((left, holds) => (left.some(holds) ? left.filter(holds) : left), columns);
  return narrowed.filter(
    (column, i) => !narrowed.slice(0, i).some((before) => isCopy(before.numbers!, column.numbers!)),
  );
}

function isCopy(a: Float64Array, b: Float64Array): boolean {
  return a.every((value, row) => value === b[row] || (Number.isNaN(value) && Number.isNaN(b[row]!)));
}

type Found = { readonly [Key in FlowKey]: readonly FileColumn[] };

/** Of several columns, those that make a power of volts and amperes. */
function chosenByProduct(found: Found): Found {
  const { power, volts, amps } = found;
  const several = [power, volts, amps].filter((list) => list.length > 1).length;
  if (several === 0 || power.length === 0 || volts.length === 0 || amps.length === 0) return found;
  const fitting = power.flatMap((p) =>
    volts.flatMap((v) =>
      amps
        .filter((a) => isPlainProduct(productRatio(v.numbers!, a.numbers!, p.numbers!)))
        .map((a) => ({ p, v, a })),
    ),
  );
  const [only] = fitting;
  if (fitting.length !== 1 || only === undefined) return found;
  return { power: power.length > 1 ? power : [only.p], volts: [only.v], amps: [only.a] };
}

/** Rounding of three columns. */
const PRODUCT_WITHIN = 0.02;

/** Whether a ratio is a power of a thousand. */
export function isPlainProduct(ratio: number | null): boolean {
  return ratio !== null && Math.abs(ratio / thousandsOf(ratio) - 1) <= PRODUCT_WITHIN;
}

/** The power of a thousand nearest to a ratio. @param ratio - positive. */
export function thousandsOf(ratio: number): number {
  const exponent = decimalExponent(ratio * Math.sqrt(10));
  return Number(`1e${3 * Math.round(exponent / 3)}`);
}

/** Of the largest: below it, what a meter rounds counts for too much. */
const LOADED = 0.1;
const FEWEST = 3;

/** The middle of watts over volts times amperes, where there is a load; null where there hardly is. */
export function productRatio(volts: Float64Array, amps: Float64Array, watts: Float64Array): number | null {
  const step = Math.max(1, Math.floor(watts.length / 20_000));
  let most = 0;
  for (let row = 0; row < watts.length; row += step) {
    const size = Math.abs(watts[row]!);
    if (size > most) most = size;
  }
  const ratios: number[] = [];
  for (let row = 0; row < watts.length; row += step) {
    const ratio = Math.abs(watts[row]! / (volts[row]! * amps[row]!));
    if (Math.abs(watts[row]!) > LOADED * most && ratio > 0 && ratio < Number.POSITIVE_INFINITY)
      ratios.push(ratio);
  }
  if (ratios.length < FEWEST) return null;
  return median(ratios);
}

/**
 * The column that a person names: by its name, by `column 3`, or by 3, and perhaps the unit of its numbers behind an
 * equals sign: `Power=mW`.
 *
 * @throws MeasureError `log.column.unknown`; `log.column.choose` where several have that name.
 */
export function toldColumn(columns: readonly FileColumn[], key: LogOptionKey, wanted: string): Reading {
  const split = /^(.*)=([^=]+)$/.exec(wanted.trim());
  const unit = split === null ? null : logUnit(split[2]!);
  const name = (unit === null ? wanted : split![1]!).trim().toLowerCase();
  const number = /^(?:column )?(\d+)$/.exec(name);
  const readable = columns.filter(({ numbers }) => numbers !== null);
  const named = readable.filter((column) => names(column).includes(name));
  const found =
    named.length > 0 || number === null
      ? named
      : readable.filter(({ index }) => index === Number(number[1]) - 1);
  const [first, ...others] = found;
  if (first === undefined)
    throw logError('log.column.unknown', { key, wanted, columns: readable.map(({ shown }) => shown) });
  if (others.length > 0)
    throw logError('log.column.choose', { key, columns: found.map(({ shown }) => shown) });
  return { column: first, unit };
}

function names({ shown, name }: FileColumn): string[] {
  const bare = name.full.replace(/\s*[([{][^()[\]{}]*[)\]}]\s*$/, '');
  return [shown, name.full, bare].map((one) => one.toLowerCase()).filter((one) => one !== '');
}

/** The unit that a factor says. */
export function unitOfFactor(key: FlowKey, factor: number): LogUnit {
  return scaledUnit(QUANTITY[key], factor);
}
