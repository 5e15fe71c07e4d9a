import { noBreakSpace } from './numbers.ts';

/**
 * Text from outside (a file's name, a channel's, a label) made harmless to look at: control and escape
 * characters, direction marks and other invisible format characters, lone surrogates and private-use
 * characters each become the replacement mark U+FFFD; a pile of combining marks is cut to two; runs of
 * blanks become one.
 *
 * @remarks Markup is not touched: what draws or prints the text escapes it in its own way.
 * @example cleanText('a\u001b[31mb') // "a\ufffd[31mb"
 */
export function cleanText(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}\ufdd0-\ufdef\ufffe\uffff]/gu, '\ufffd')
    .replace(/(\p{M}{2})\p{M}+/gu, '$1')
    .replace(/ {2,}/g, ' ')
    .trim();
}

/**
 * A copy of a plain value in which every string is cleaned (see `cleanText`): the one door between what a
 * file or a person said and what is drawn or printed. Numbers and typed arrays pass as they are.
 */
export function cleanTexts<T>(value: T): T {
  return clean(value) as T;
}

function clean(value: unknown): unknown {
  if (typeof value === 'string') return cleanText(value);
  if (Array.isArray(value)) return value.map(clean);
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, clean(entry)]));
}

/**
 * A plain value as JSON that is harmless wherever it is shown: what `cleanText` would replace in a text (escape
 * characters, direction marks and other invisible ones) stands as its \u escape, which reads back as it was.
 *
 * @param indent - blanks a level; 0: all on one line.
 * @example jsonText('a\u202eb') // '"a\\u202eb"'
 */
export function jsonText(value: unknown, indent = 0): string {
  return JSON.stringify(value, null, indent).replace(
    /[\p{Cf}\p{Co}\p{Zl}\p{Zp}\u007f-\u009f\ufdd0-\ufdef\ufffe\uffff]/gu,
    (character) =>
      Array.from(
        { length: character.length },
        (_, i) => `\\u${character.charCodeAt(i).toString(16).padStart(4, '0')}`,
      ).join(''),
  );
}

/** What every sheet, card and page says of safety. */
export const caution =
  'Mains voltage can kill. Use an isolated or differential probe rated for the voltage and category; a scope’s ground clip is earth. Never connect an inverter’s output to building wiring. Local codes and licensed practice come first.';

/** What none of them is. */
export const noCertificate = 'A measurement, not a certificate.';

/**
 * A text of at most so many characters, cut with an ellipsis.
 *
 * @param cutAt - `start` keeps the end, where a path has its name.
 */
export function shortText(text: string, most: number, cutAt: 'start' | 'end' = 'end'): string {
  const characters = [...text];
  if (characters.length <= most) return text;
  return cutAt === 'end'
    ? `${characters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`
    : `…${characters
        .slice(1 - most)
        .join('')
        .trimStart()}`;
}

const words: readonly (readonly [RegExp, string])[] = [
  [/(?<=\d)[ \u00a0]%/g, ' percent'],
  [/(?<=\d)[ \u00a0]kW\b/g, ' kilowatts'],
  [/(?<=\d)[ \u00a0]W\b/g, ' watts'],
  [/(?<=\d)[ \u00a0]V\b/g, ' volts'],
  [/(?<=\d)[ \u00a0]Hz\b/g, ' hertz'],
  [/(?<=\d)[ \u00a0]ms\b/g, ' milliseconds'],
  [/(?<=\d)[ \u00a0]s\b/g, ' seconds'],
  [/(?<=\d)[ \u00a0]?Ω/g, ' ohms'],
  [/(?<=\d)[ \u00a0]?°/g, ' degrees'],
];

/** A sentence as it is read aloud: units after a number spelled out. */
export function spelledUnits(sentence: string): string {
  return words.reduce((said, [unit, word]) => said.replace(unit, word), sentence);
}

/**
 * A line for a terminal: no-break spaces, which have done their work once lines are broken, become plain
 * ones, so that "120 V" is found when somebody searches the output for it.
 */
export function terminalText(line: string): string {
  return line.replaceAll(noBreakSpace, ' ').trimEnd();
}

/** A phrase as the start of a sentence. */
export function capitalised(phrase: string): string {
  return phrase.charAt(0).toUpperCase() + phrase.slice(1);
}

/** The last part of a path of any system: what a sheet that gets published may show of where a capture lay. */
export function fileName(path: string): string {
  return path.split(/[\\/]/).at(-1) || path;
}

/**
 * Rows of cells as lines in columns, two blanks apart.
 *
 * @param rows - of any lengths; a short row leaves its last columns empty.
 * @param side - where cells stand in their column; `right` is for numbers.
 */
export function alignColumns(
  rows: readonly (readonly string[])[],
  side: 'left' | 'right' = 'left',
): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, [...cell].length);
    });
  }
  const padded = (cell: string, i: number): string => {
    const blanks = ' '.repeat((widths[i] ?? 0) - [...cell].length);
    return side === 'left' ? cell + blanks : blanks + cell;
  };
  return rows.map((row) => row.map(padded).join('  ').trimEnd());
}
