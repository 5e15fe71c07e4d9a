import { type ChannelPlace, channelSetting } from '../head/names.ts';
import type { ColumnHead, Head } from '../head/readHead.ts';
import { unitOf } from '../head/unitOf.ts';
import type { TableShape } from '../table/table.ts';
import { type AxisColumn, axisColumn, columnRole, type RoledColumn } from './columnRole.ts';
import type { ColumnTrend } from './columnTrend.ts';

/** A column of values, with what the head says about it wherever it says so. */
export interface ValueColumn extends RoledColumn {
  readonly place: ChannelPlace;
  /** Whether the unit stands above the column itself, not in the settings, where it may be the scale's. */
  readonly isUnitInHeader: boolean;
  /** Whether its numbers are printed whole, as a converter's codes are. */
  readonly isPrintedWhole: boolean;
  /** Whether it is the lowest or highest value of another channel in each step of time. */
  readonly isEnvelope: boolean;
}

/** A time column and the columns of values that go by it. */
export interface ColumnBlock {
  readonly axis: AxisColumn;
  readonly values: readonly ValueColumn[];
}

const NAME_KEY = /^(source|channel|trace|signal|label|curve)s?( names?)?$/;
const UNIT_KEY = /^((vertical|y|v) )?(axis )?units?( labels?)?$/;
const X_UNIT_KEY = /^(horizontal|x|h)( axis)? units?$/;

/**
 * Gives each column its role. Where several columns are times, each starts a block.
 *
 * @param trends - of the table's columns, in order: what they hold tells an axis that no header names.
 * @returns at least one block.
 */
export function layColumns(
  table: TableShape,
  head: Head,
  trends: readonly ColumnTrend[],
  hasInterval: boolean,
): [ColumnBlock, ...ColumnBlock[]] {
  const roled = head.columns.map(columnRole);
  const axis = axisColumn(roled, trends, hasInterval);
  const laterStarts = axis.kind === 'time' ? laterTimes(roled, axis, trends) : [];
  const edges = [0, ...laterStarts, roled.length];
  const blocks = edges.slice(1).map((to, b): ColumnBlock => {
    const own = roled.slice(edges[b]!, to);
    if (b === 0) return layBlock(table, head, own, axis);
    return layBlock(table, head, own, {
      kind: 'time',
      column: own[0]!,
      isUnitAssumed: own[0]!.unit === null,
    });
  });
  return blocks as [ColumnBlock, ...ColumnBlock[]];
}

/** Indices of the columns behind the axis that are times too: told so, or as nameless as it and as even. */
function laterTimes(
  roled: readonly RoledColumn[],
  axis: AxisColumn,
  trends: readonly ColumnTrend[],
): number[] {
  const isGuessed = axis.column?.role !== 'time';
  return roled
    .filter((column) => column.index > axis.column!.index)
    .filter((column) =>
      isGuessed
        ? column.unit === null && column.name === '' && trends[column.index]!.risesEvenly()
        : column.role === 'time',
    )
    .map((column) => column.index);
}

/** @param own - the block's columns, time included. */
function layBlock(table: TableShape, head: Head, own: readonly RoledColumn[], axis: AxisColumn): ColumnBlock {
  const [first, last] = [own[0]!.index, own.at(-1)!.index];
  // Keys stand left of the columns that they belong to; behind the last block they are its own.
  const keysAfter = first === 0 ? -1 : table.columns[first - 1]!;
  const keysTo = last === table.columns.length - 1 ? Number.POSITIVE_INFINITY : table.columns[last]!;
  const isValue = (column: RoledColumn): boolean =>
    column.index !== axis.column?.index && column.role !== 'time' && column.role !== 'index';
  const valueColumns = own.filter(isValue);
  const envelopes = envelopeNames(valueColumns.map((column) => column.name));
  const placed = valueColumns.map((column, channelIndex): ValueColumn => {
    const place: ChannelPlace = {
      columnIndex: own.indexOf(column),
      columnCount: own.length,
      channelIndex,
      channelCount: valueColumns.length,
      keysAfter,
      keysTo,
      name: column.name.toLowerCase(),
    };
    const resolved = columnRole(withSettings(column, head, place), column.index);
    const isEnvelope = envelopes.has(column.name);
    const role = isEnvelope ? 'other' : resolved.role;
    const isPrintedWhole = table.wholeColumns.includes(column.column);
    return { ...resolved, role, place, isUnitInHeader: column.unit !== null, isPrintedWhole, isEnvelope };
  });
  return { axis: withAxisUnit(axis, head), values: placed };
}

/** Name and unit from the settings where the header has none. */
function withSettings(column: ColumnHead, head: Head, place: ChannelPlace): ColumnHead {
  const named = (key: RegExp): string => channelSetting(head.settings, key, place)?.values[0] ?? '';
  const unit = column.unit ?? unitOf(named(UNIT_KEY));
  return {
    ...column,
    name: column.name || named(NAME_KEY),
    unit: unit?.dimension === 'time' ? column.unit : unit,
  };
}

function withAxisUnit(axis: AxisColumn, head: Head): AxisColumn {
  if (axis.kind !== 'time' || axis.column === null || !axis.isUnitAssumed) return axis;
  const setting = head.settings.find((candidate) => X_UNIT_KEY.test(candidate.key));
  const unit = unitOf(setting?.values[0] ?? '');
  return unit?.dimension === 'time'
    ? { kind: 'time', column: { ...axis.column, unit }, isUnitAssumed: false }
    : axis;
}

/**
 * The columns that are the minimum and maximum of one channel: two names that differ only in those words.
 *
 * @returns the set of such names.
 */
export function envelopeNames(names: readonly string[]): ReadonlySet<string> {
  const sidesByStem = new Map<string, Set<string>>();
  const stemOf = (name: string): { stem: string; side: string } | null => {
    const match = /(^|[\s_.(-])(min|max|minimum|maximum|lower|upper|low|high)(?=$|[\s_.)-])/i.exec(name);
    if (match === null) return null;
    const side = /^(min|lo)/i.test(match[2]!) ? 'low' : 'high';
    return { stem: name.replace(match[2]!, '').toLowerCase(), side: /lower/i.test(match[2]!) ? 'low' : side };
  };
  for (const name of names) {
    const found = stemOf(name);
    if (found === null) continue;
    const sides = sidesByStem.get(found.stem) ?? new Set<string>();
    sidesByStem.set(found.stem, sides.add(found.side));
  }
  return new Set(names.filter((name) => sidesByStem.get(stemOf(name)?.stem ?? '\0')?.size === 2));
}
