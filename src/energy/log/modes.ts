import type { LogMode } from './energyLog.ts';
import type { FileColumn } from './fileColumns.ts';

/** In order: the first that matches decides. */
const MODES: readonly (readonly [pattern: RegExp, mode: LogMode])[] = [
  [/^(not (dis)?charging|no charge)/, 'idle'],
  [/dis ?ch|\bdch|\bdsg|dchrg|dchg|entlad|décharge|descarga|scarica|^d$|\bdrain/, 'discharge'],
  [/char?ge?|chrg|\bchg|laden|lädt|charge|carga|carica|^c$/, 'charge'],
  [
    /rest|idle|pause|full|stand ?by|\boff\b|stop|ruhe|wait|hold|open|ocv|finish|done|complete|none|unknown|^[ro]$/,
    'idle',
  ],
];

/** Rows of other words than these: a column that holds many tells no modes. */
const MOST_WORDS = 40;

/** What a word of a column of modes means. @example modeOf('DCHG') // 'discharge' */
function modeOf(text: string): LogMode {
  const words = text
    .toLowerCase()
    .replace(/[_\s-]+/g, ' ')
    .trim();
  return MODES.find(([pattern]) => pattern.test(words))?.[1] ?? null;
}

/**
 * The column that says of each row whether it charges or discharges: by its words, among which one of the two must be.
 *
 * @returns null where there is none.
 */
export function findModes(
  columns: readonly FileColumn[],
): { readonly column: FileColumn; readonly modes: readonly LogMode[] } | null {
  const candidates = columns.flatMap((column) => {
    const texts = column.words?.texts;
    if (texts === undefined || texts.length > MOST_WORDS) return [];
    const meanings = texts.map(modeOf);
    const share = meanings.filter((mode) => mode !== null).length / texts.length;
    const isTold = meanings.includes('charge') || meanings.includes('discharge');
    const isNamed = column.name.quantity === 'mode';
    return isTold && (isNamed || share > 0.5) ? [{ column, meanings, isNamed, share }] : [];
  });
  const [best] = candidates.sort((a, b) => Number(b.isNamed) - Number(a.isNamed) || b.share - a.share);
  if (best === undefined) return null;
  return { column: best.column, modes: Array.from(best.column.words!.codes, (code) => best.meanings[code]!) };
}
