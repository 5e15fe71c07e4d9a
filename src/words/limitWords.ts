import type { Finding } from '../judge/limits/findings.ts';
import { limitQuantities } from '../judge/limits/limitQuantities.ts';
import type { LimitTable } from '../judge/limits/limitTable.ts';
import { outcomeWords } from './claimWords.ts';
import { breakLines } from './courseWords.ts';
import { noBreakSpace, significantText, withUnit } from './numbers.ts';
import { besideLimit, limitText, marginText, quantityParts } from './quantities.ts';
import { alignColumns, capitalised, terminalText } from './text.ts';

/**
 * The strongest public findings in a sentence or two; a limit from memory never stands here, nor one for another place
 * than an outlet.
 *
 * "Outside 2 of 27 reference limits, worst: harmonic 15 at 0.65 %, limit at most 0.5 % (EN 50160:2010, 4.2.5)."
 *
 * @returns null where no public limit was applied.
 */
export function findingSentence(findings: readonly Finding[]): string | null {
  const judged = worstFindings(findings).filter(
    ({ provenance, elsewhere }) => provenance === 'public' && elsewhere !== true,
  );
  const [worst] = judged;
  if (worst === undefined) return null;
  const outside = judged.filter(({ side }) => side === 'outside').length;
  const count = judged.length === 1 ? '1 reference limit' : `${judged.length} reference limits`;
  const sum =
    outside === 0
      ? `Inside ${count}${judged.length === 1 ? '' : ', among them'}`
      : `Outside ${outside} of ${count}, worst`;
  const { name, value, limit, source } = findingText(worst);
  const doubt = worst.outcome.startsWith('conditional') ? `, ${outcomeWords(worst.outcome)}` : '';
  return `${sum}: ${name.toLowerCase().replace(/^(rms|thd)/, (word) => word.toUpperCase())} at ${value}, limit ${limit}${doubt} (${source}).`;
}

/** A finding's cells in text. */
interface FindingText {
  /** `Harmonic 15`. */
  readonly name: string;
  /** `0.62 %`, `9.8 % of nominal`. */
  readonly value: string;
  /** `at most 0.5 %`. */
  readonly limit: string;
  /** `outside by 0.12 points`. */
  readonly margin: string;
  /** `EN 50160:2010, 4.2.5`. */
  readonly source: string;
  /** `Limit from memory` where it is, else `Limit`: to be put before it. */
  readonly limitName: string;
}

/** Puts a finding into words. */
export function findingText(finding: Finding): FindingText {
  const { name, unit, base } = quantityParts(finding.quantity);
  const standard = standardText(finding.standard, finding.edition);
  const value = withUnit(besideLimit(finding.value, finding.limit), unit);
  return {
    name: capitalised(name),
    value: base === '' ? value : `${value} ${base}`,
    limit: limitText(finding.limit, unit),
    margin: marginText(finding, unit),
    source: finding.clause === '' ? standard : `${standard}, ${finding.clause}`,
    limitName: finding.provenance === 'memory' ? 'Limit from memory' : 'Limit',
  };
}

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
    'highestOrder' in row ? `${row.quantity} to order ${row.highestOrder}` : row.quantity,
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

/**
 * Findings, most telling first: what fails, what probably fails, what lies outside for information, then what only
 * probably holds, then what holds. Among equals a limit from memory stands behind a public one; then THD, RMS voltage
 * and frequency before the rest, and single harmonics, which follow from the whole, last; then by the share of the limit
 * that is left.
 *
 * @remarks A harmonic that uses less than half of its limit stands behind all that: it says nothing beside the THD, even
 * where its doubt is as large as so small a limit. A limit for another place than an outlet stands last of all.
 */
export function worstFindings(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) =>
      Number(a.elsewhere ?? false) - Number(b.elsewhere ?? false) ||
      severity(a) - severity(b) ||
      Number(a.provenance === 'memory') - Number(b.provenance === 'memory') ||
      rank(a) - rank(b) ||
      relativeMargin(a) - relativeMargin(b),
  );
}

function severity(finding: Finding): number {
  const { outcome, side } = finding;
  if (isTinyHarmonic(finding)) return 6;
  if (outcome === 'information') return side === 'outside' ? 2 : 5;
  return { fail: 0, 'conditional fail': 1, 'conditional pass': 3, pass: 4 }[outcome];
}

/** What a reader would quote, most likely first; outside, only that single harmonics follow from the whole. */
function rank({ quantity, side }: Finding): number {
  if (quantity.startsWith('harmonic ')) return NOT_QUOTED + 1;
  if (side === 'outside') return 0;
  const [, entry] = Object.entries(limitQuantities).find(([name]) => quantity.startsWith(`${name} `)) ?? [];
  return entry?.quoted ?? NOT_QUOTED;
}

/** Behind those that a reader would quote, before single harmonics. */
const NOT_QUOTED = 3;

function isTinyHarmonic({ quantity, side, margin, limit }: Finding): boolean {
  return quantity.startsWith('harmonic ') && side === 'inside' && margin > (limit.max ?? 0) / 2;
}

/** Margin as a share of the limit's size, so that volts and percent can be ranked together. */
function relativeMargin({ margin, limit }: Finding): number {
  const size = Math.max(Math.abs(limit.max ?? 0), Math.abs(limit.min ?? 0));
  return size === 0 ? margin : margin / size;
}

/** A standard with its edition: "EN 50160:2010", "NEMA MG 1 (edition not checked)". */
export function standardText(standard: string, edition: string): string {
  return /^\d/.test(edition) ? `${standard}:${edition}` : `${standard} (${edition})`;
}
