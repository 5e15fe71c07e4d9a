import type { LimitTable } from '../../verdict/limits/limitTable.ts';
import { limitText } from '../numbers/limitText.ts';
import { significantText } from '../numbers/significantText.ts';
import { noBreakSpace } from '../numbers/withUnit.ts';
import { alignColumns } from './alignColumns.ts';
import { breakLines } from './breakLines.ts';
import { standardText } from './standardText.ts';
import { terminalText } from './terminalText.ts';

/** Characters a line of the list of harmonic limits. */
const width = 100;

/** The limit tables for a terminal: each standard with its edition, its rows with clause and provenance, its harmonics. */
export function limitLines(tables: readonly LimitTable[]): readonly string[] {
  return tables.flatMap(tableLines).map(terminalText);
}

function tableLines({ standard, edition, subject, appliesTo, rows, harmonics }: LimitTable): string[] {
  const { voltageV, frequencyHz } = appliesTo ?? {};
  const nominal = [
    ...(voltageV === undefined ? [] : [`${voltageV} V`]),
    ...(frequencyHz === undefined ? [] : [`${frequencyHz} Hz`]),
  ].join(' ');
  const cells = rows.map((row) => [
    row.quantity === 'THD' ? `THD to order ${row.highestOrder}` : row.quantity,
    limitText(row.limit, row.unit),
    row.clause,
    provenanceWords(row.provenance),
    row.remark,
  ]);
  const head = `${standardText(standard, edition)}, limits for ${subject}${nominal === '' ? '' : ` (${nominal})`}`;
  const lines = [head, ...alignColumns(cells).map((line) => `  ${line}`)];
  if (harmonics !== undefined) {
    const title = `harmonics, ${harmonics.unit}, ${harmonics.clause}, ${provenanceWords(harmonics.provenance)}; ${harmonics.remark}:`;
    lines.push(`  ${title}`, ...breakLines(harmonicList(harmonics.limitPercent), wrapping));
  }
  return [...lines, ''];
}

const wrapping = { width, lead: '    ', indent: '    ' } as const;

/** "2: 2, 3: 5, 4: 1, 5 to 9: 6": highest percent by order, neighbours of one limit taken together. */
function harmonicList(limitPercent: ReadonlyMap<number, number>): string {
  const runs: { from: number; to: number; percent: number }[] = [];
  for (const [order, percent] of [...limitPercent].sort(([a], [b]) => a - b)) {
    const last = runs.at(-1);
    if (last?.to === order - 1 && last.percent === percent) last.to = order;
    else runs.push({ from: order, to: order, percent });
  }
  return runs
    .map(
      ({ from, to, percent }) => `${from === to ? from : `${from} to ${to}`}: ${significantText(percent, 3)}`,
    )
    .map((run) => run.replaceAll(' ', noBreakSpace))
    .join(', ');
}

function provenanceWords(provenance: 'public' | 'memory'): string {
  return provenance === 'public' ? 'from a public page' : 'from memory';
}
