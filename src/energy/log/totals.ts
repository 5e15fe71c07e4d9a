import type { HeadLine } from '../../read/table/table.ts';
import type { LogTotal } from './energyLog.ts';
import { logNumber, unitInCell } from './logCells.ts';
import { logUnit } from './logUnits.ts';

/** What a unit should have, not what was counted. */
const NOT_COUNTED = /\b(rated|nominal|design|typical|limit|cut ?-?off|set ?point|max|min|nenn\w*)/i;
const COUNTED =
  /\b(energy|energie|énergie|energía|total|sum|consum\w*|tested|capacity|kapazität|delivered|measured|charge|discharge|result|wh|ah)\b/i;
const AMOUNT = /([+-]?\d[\d.,]*(?:[eE][+-]?\d+)?)\s*([kmµu]?(?:wh|ah))\b/i;

/**
 * Totals of energy and charge that stand above or below the rows: `Total energy: 85.2 Wh`, a label with its value
 * beside it or below.
 */
export function findTotals(head: readonly HeadLine[], foot: readonly HeadLine[]): LogTotal[] {
  return [...totalsIn(head, 'head'), ...totalsIn(foot, 'foot')];
}

function totalsIn(lines: readonly HeadLine[], place: LogTotal['place']): LogTotal[] {
  return lines.flatMap(({ cells }, i): LogTotal[] =>
    cells.flatMap((cell, column): LogTotal[] => {
      const amount = amountOf(cell, cells[column + 1] ?? '', cells[column - 1] ?? '');
      if (amount === null) return [];
      const beside = cells
        .slice(0, column)
        .findLast((other) => /[a-z]{2}/i.test(other) && logNumber(other) === null);
      const above = lines[i - 1]?.cells[column] ?? '';
      const label = /[a-z]{3}/i.test(cell.replace(AMOUNT, '')) ? cell : (beside ?? above);
      if (!COUNTED.test(label.replaceAll('_', ' ')) || NOT_COUNTED.test(label)) return [];
      return [{ ...amount, place }];
    }),
  );
}

/** `85.2 Wh`; `85.2` with `Wh` in the next cell, or `(Wh)` in the label before. */
function amountOf(cell: string, next: string, before: string): Pick<LogTotal, 'quantity' | 'value'> | null {
  const within = AMOUNT.exec(cell);
  const plain = logNumber(cell);
  const inLabel = /[([]\s*([kmµu]?[wa]h)\s*[)\]]/i.exec(before)?.[1] ?? '';
  const unit =
    within !== null
      ? logUnit(within[2]!)
      : plain === null
        ? null
        : (unitInCell(cell) ?? logUnit(next) ?? logUnit(inLabel));
  const value = within !== null ? logNumber(within[1]!) : plain;
  if (value === null || unit === null || (unit.quantity !== 'energy' && unit.quantity !== 'charge'))
    return null;
  return { quantity: unit.quantity, value: value * unit.factor };
}
