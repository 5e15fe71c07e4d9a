import type { Encoding } from '../bytes/detectEncoding.ts';
import type { Dialect } from '../bytes/dialect.ts';
import type { Channel } from './capture.ts';
import type { AxisColumn } from './columns/axisColumn.ts';

const DELIMITER_WORDS = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
  blanks: 'blanks',
} as const;

/**
 * The layout that was recognised, in one line of words.
 *
 * @example 'comma, 2 header rows, time in s, 2 channels in V'
 */
export function describeLayout(
  dialect: Dialect,
  encoding: Encoding,
  headerRowCount: number,
  axis: AxisColumn,
  channels: readonly Channel[],
): string {
  const units = new Map<string, number>();
  for (const { unit } of channels) units.set(unit, (units.get(unit) ?? 0) + 1);
  const parts = [
    DELIMITER_WORDS[dialect.delimiter],
    dialect.decimalMark === ',' ? 'decimal comma' : '',
    encoding === 'utf-8' ? '' : encoding.toUpperCase(),
    headerRowCount === 0
      ? 'no header row'
      : `${headerRowCount} header ${headerRowCount === 1 ? 'row' : 'rows'}`,
    axisWords(axis),
    ...[...units].map(([unit, count]) => channelWords(unit, count)),
  ];
  return parts.filter((part) => part !== '').join(', ');
}

function axisWords({ kind, column }: AxisColumn): string {
  if (kind === 'rows') return 'no time column';
  if (kind === 'index') return 'numbered rows';
  const factor = column?.unit?.factor ?? 1;
  const prefix = { 1: '', 0.001: 'm', 1e-6: 'µ', 1e-9: 'n', 1e-12: 'p' }[factor] ?? '';
  return `time in ${prefix}s`;
}

function channelWords(unit: string, count: number): string {
  return `${count} ${count === 1 ? 'channel' : 'channels'} ${unit === '' ? 'without a unit' : `in ${unit}`}`;
}
