import { readError } from '../../read/readErrors.ts';
import type { HeadLine } from '../../read/table/table.ts';
import { type Delimiter, splitCells } from '../../read/text/dialect.ts';
import { cleanText, lineAt, sampleLines } from '../../read/text/textAccess.ts';
import { type CellKind, cellKind, unitInCell } from './logCells.ts';
import { type LogUnit, logUnit } from './logUnits.ts';

/** Where the rows of a log stand in its text, and what stands above them. */
export interface LogTable {
  readonly delimiter: Delimiter;
  /** What each column of the file holds, in order. */
  readonly kinds: readonly ColumnKind[];
  /** 0-based columns that nearly every row fills. */
  readonly core: readonly number[];
  /** One a column, `''` where the file names none; null: it names none at all. */
  readonly names: readonly string[] | null;
  /** Units that a line between names and rows gives, or that stand behind the numbers. */
  readonly units: readonly (LogUnit | null)[];
  /** Lines above the rows, the names and units left out. */
  readonly head: readonly HeadLine[];
  /** The line of names as the file writes it, which may stand again above another test. */
  readonly headerText: string | null;
  readonly bodyFrom: number;
  readonly bodyLine: number;
}

type ColumnKind = 'number' | 'stamp' | 'word' | 'empty';

const SAMPLE_LINES = 400;
const DELIMITERS: readonly Delimiter[] = [',', ';', '\t', '|', 'blanks'];
/** Of the rows: a column that so many fill. */
const CORE_SHARE = 0.9;
const MOST_COLUMNS = 512;

/**
 * Finds the rows of a log: lines whose cells are numbers and stamps of time where those of most lines are.
 *
 * @throws MeasureError `rows.none`, `columns.many`.
 */
export function locateLog(text: string): LogTable {
  const samples = sampleLines(text, SAMPLE_LINES).map((line) => line.slice(0, 1 << 15));
  const delimiter = logDelimiter(samples);
  if (delimiter === null) throw readError('rows.none', { last: cleanText(samples.at(-1) ?? '', 40) });
  const { kinds, core, units } = columnKinds(samples.map((line) => splitCells(line, delimiter)));
  if (kinds.length > MOST_COLUMNS)
    throw readError('columns.many', { columns: kinds.length, most: MOST_COLUMNS });

  const above: HeadLine[] = [];
  for (let from = 0, line = 1; from < text.length; line++) {
    const { to, next } = lineAt(text, from);
    const content = text.slice(from, to);
    const cells = splitCells(content, delimiter);
    const glued = gluedRow(content, cells, kinds, core);
    if (glued !== null) {
      const namesText = content.slice(0, glued);
      above.push({ line, text: namesText, cells: splitCells(namesText, delimiter) });
    }
    if (glued !== null || isLogRow(cells, kinds, core)) {
      const { names, unitRow, count } = headerOf(above, kinds);
      return {
        ...{ delimiter, kinds, core, names },
        units: kinds.map((_, column) => unitRow?.[column] ?? units[column] ?? null),
        head: above.slice(0, above.length - count),
        headerText: count === 0 ? null : above.at(-count)!.text.trim(),
        ...{ bodyFrom: from + (glued ?? 0), bodyLine: line },
      };
    }
    if (cells.some((cell) => cell !== '')) above.push({ line, text: content, cells });
    from = next;
  }
  throw readError('rows.none', { last: cleanText(samples.at(-1) ?? '', 40) });
}

/** The one under which the largest share of cells are numbers or stamps, then the most; null where none are. */
function logDelimiter(lines: readonly string[]): Delimiter | null {
  let best: { readonly delimiter: Delimiter; readonly score: number; readonly values: number } | null = null;
  for (const delimiter of DELIMITERS) {
    let score = 0;
    let values = 0;
    let strays = 0;
    for (const line of lines) {
      const cells = splitCells(line, delimiter).filter((cell) => cell !== '');
      const count = cells.filter((cell) => isValue(cellKind(cell))).length;
      // A sentence with a number in it is no row, whatever parts its words.
      if (count < cells.length / 2) {
        strays += count;
        continue;
      }
      score += count / cells.length;
      values += count;
    }
    if (values === 0) {
      // Rows that are words for the greater part may be all there is.
      if (strays === 0) continue;
      values = strays;
    }
    // Shares summed in floating point.
    const isBetter =
      best === null || score > best.score + 1e-3 || (score > best.score - 1e-3 && values > 1.2 * best.values);
    // A blank inside a stamp parts its date from its time, and makes two values of one.
    if (isBetter && !(delimiter === 'blanks' && best !== null && score <= best.score + 1e-3))
      best = { delimiter, score, values };
  }
  return best?.delimiter ?? null;
}

function isValue(kind: CellKind): boolean {
  return kind === 'number' || kind === 'stamp';
}

type Counts = Record<CellKind, number>;

function columnKinds(lines: readonly (readonly string[])[]): Pick<LogTable, 'kinds' | 'core' | 'units'> {
  // Lines that hold as many values as most do: no head.
  const rows = rowsAmong(lines);
  const width = rows.reduce((most, cells) => Math.max(most, filledWidth(cells)), 0);
  const units: (LogUnit | null)[] = [];
  const counted = Array.from({ length: width }, (_, column): Counts => {
    const counts: Counts = { number: 0, stamp: 0, missing: 0, word: 0 };
    let unit: LogUnit | null = null;
    for (const cells of rows) {
      const cell = cells[column] ?? '';
      const kind = cellKind(cell);
      counts[kind]++;
      if (kind === 'number' && unit === null) unit = unitInCell(cell);
    }
    units.push(unit);
    return counts;
  });
  const kinds = counted.map(({ number, stamp, word }): ColumnKind => {
    // A line of settings may reach farther than the rows.
    if (number + stamp + word < Math.min(2, rows.length)) return 'empty';
    if (word > number && word > stamp) return 'word';
    return stamp > number ? 'stamp' : 'number';
  });
  while (kinds.at(-1) === 'empty') kinds.pop();
  const isCore = ({ missing }: Counts): boolean => missing <= (1 - CORE_SHARE) * rows.length;
  const core = [...kinds.keys()].filter((column) => kinds[column] !== 'word' && isCore(counted[column]!));
  return { kinds, core, units };
}

function rowsAmong(lines: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const sizes = lines.map((cells) => cells.filter((cell) => isValue(cellKind(cell))).length);
  const counts = new Map<number, number>();
  for (const size of sizes) if (size > 0) counts.set(size, (counts.get(size) ?? 0) + 1);
  const most = [...counts.values()].reduce((a, b) => Math.max(a, b), 0);
  // Rows kept on change hold now one value and now three: all sizes that recur count.
  const usual = new Set([...counts].filter(([, count]) => count >= 0.1 * most).map(([size]) => size));
  const rows = lines.filter((_, i) => usual.has(sizes[i]!));
  return rows.length > 0 ? rows : lines;
}

function filledWidth(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell !== '') + 1;
}

/** Whether each column holds what it should, and one of them a number. */
function isLogRow(cells: readonly string[], kinds: readonly ColumnKind[], core: readonly number[]): boolean {
  if (core.some((column) => (cells[column] ?? '') === '')) return false;
  let hasNumber = false;
  for (const [column, kind] of kinds.entries()) {
    const found = cellKind(cells[column] ?? '');
    if (found === 'missing' || kind === 'word' || kind === 'empty') continue;
    if (found !== kind) return false;
    hasNumber ||= found === 'number';
  }
  return hasNumber;
}

/**
 * Where the first row starts in a line of names that it is glued to, as where a writer forgot the line's end.
 *
 * @returns null where the line is none such.
 */
function gluedRow(
  line: string,
  cells: readonly string[],
  kinds: readonly ColumnKind[],
  core: readonly number[],
): number | null {
  const width = kinds.length;
  if (width < 2 || cells.length !== 2 * width - 1 || cellKind(cells[0]!) !== 'word') return null;
  const joint = cells[width - 1]!;
  for (let at = 1; at < joint.length; at++) {
    // Within a number the rest of it is one too.
    if (/\d/.test(joint.charAt(at - 1))) continue;
    const row = [joint.slice(at), ...cells.slice(width)];
    if (cellKind(row[0]!) !== 'missing' && isLogRow(row, kinds, core)) {
      const place = line.indexOf(joint);
      return place < 0 ? null : place + at;
    }
  }
  return null;
}

interface FoundHeader {
  readonly names: readonly string[] | null;
  readonly unitRow: readonly (LogUnit | null)[] | null;
  /** Lines of the head that it takes. */
  readonly count: number;
}

/** The names right above the rows, and the line of units below them where there is one. */
function headerOf(above: readonly HeadLine[], kinds: readonly ColumnKind[]): FoundHeader {
  const [upper, lower] = [above.at(-2), above.at(-1)];
  if (lower === undefined) return { names: null, unitRow: null, count: 0 };
  const lowerCells = headerCells(lower, kinds.length);
  if (lowerCells === null) return { names: null, unitRow: null, count: 0 };
  const upperCells = upper === undefined ? null : headerCells(upper, kinds.length);
  const filled = lowerCells.filter((cell) => cell !== '');
  if (upperCells !== null && filled.every((cell) => logUnit(cell) !== null)) {
    return { names: upperCells, unitRow: lowerCells.map((cell) => logUnit(cell)), count: 2 };
  }
  return { names: lowerCells, unitRow: null, count: 1 };
}

/** The cells of a line that may name the columns, one a column; null where it doesn't. */
function headerCells({ text, cells }: HeadLine, width: number): readonly string[] | null {
  const marked = /^[#%]+\s*/;
  const bare = text.replace(/^\ufeff/, '').replace(marked, '');
  const candidates = [
    marked.test(cells[0] ?? '') ? [cells[0]!.replace(marked, ''), ...cells.slice(1)] : cells,
    ...DELIMITERS.map((delimiter) => splitCells(bare, delimiter)),
    bare.split(/\s+(?![([])/),
  ];
  const fits = (count: number): boolean => count === width;
  const found =
    candidates.find((names) => fits(names.length)) ??
    candidates.find((names) => fits(filledWidth(names)) || (width > 2 && names.length === width - 1)) ??
    (cells.length > width && filledWidth(cells) >= width ? cells : undefined);
  if (found === undefined) return null;
  // A table whose rows are numbered may leave that column without a name.
  const names = found.length === width - 1 && width > 2 ? shifted(found) : [...found.slice(0, width)];
  const filled = names.filter((name) => name !== '');
  const words = filled.filter((name) => cellKind(name) === 'word');
  return words.length >= Math.max(1, filled.length / 2) && filled.length >= width / 2 ? names : null;
}

function shifted(names: readonly string[]): string[] {
  return ['', ...names];
}
