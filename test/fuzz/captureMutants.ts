/**
 * Ways in which a capture gets damaged between scope and reader: cells and lines lost or doubled, delimiters and
 * marks changed by a spreadsheet, bytes lost, encodings changed, numbers that no instrument means.
 */

/** Numbers in [0, 1), seeded by the caller. */
export type Random = () => number;

/**
 * - `rows`: shape of single rows; what stands in the others is untouched.
 * - `values`: a number becomes another number: data that may be meant so, and may move a figure.
 * - `file`: how the whole is written, or cut.
 */
type MutationKind = 'rows' | 'values' | 'file';

interface Mutation {
  readonly kind: MutationKind;
  /** @param lines - of the file, without their ends. @returns new lines; may be the same. */
  readonly apply: (lines: readonly string[], random: Random) => readonly string[];
}

export interface CaptureMutant {
  readonly bytes: Uint8Array;
  /** Names of what was done, in order. */
  readonly done: readonly string[];
  readonly kinds: ReadonlySet<MutationKind>;
}

const whole = (random: Random, below: number): number => Math.floor(random() * below);
const oneOf = <T>(random: Random, items: readonly T[]): T => items[whole(random, items.length)]!;

const DELIMITER = /[,;\t|]/;
const delimiterOf = (lines: readonly string[]): string =>
  DELIMITER.exec(lines[lines.length >> 1] ?? '')?.[0] ?? ',';

/** Changes some rows, from one to a share drawn between 0.01 % and 20 % of them. */
function someRows(change: (line: string, delimiter: string, random: Random) => string | readonly string[]) {
  return (lines: readonly string[], random: Random): readonly string[] => {
    const delimiter = delimiterOf(lines);
    const share = 10 ** (-4 + 3.3 * random());
    const always = whole(random, lines.length);
    return lines.flatMap((line, i) =>
      i === always || random() < share ? change(line, delimiter, random) : [line],
    );
  };
}

function someCells(change: (cell: string, random: Random) => string | readonly string[]) {
  return someRows((line, delimiter, random) => {
    const cells = line.split(delimiter);
    const at = whole(random, cells.length);
    return cells.flatMap((cell, i) => (i === at ? change(cell, random) : [cell])).join(delimiter);
  });
}

function everywhere(change: (text: string, random: Random) => string) {
  return (lines: readonly string[], random: Random): readonly string[] =>
    change(lines.join('\n'), random).split('\n');
}

const HUGE = [
  '1e308',
  '-1e308',
  '1e-308',
  '9.9E37',
  '1e400',
  '5e-324',
  '123456789012345678901234567890',
  '-0',
  '1e22',
];
const MARKS = [
  '',
  'inf',
  '-inf',
  '∞',
  'OL',
  'nan',
  '****',
  '9.91E37',
  '9.9E37',
  '---',
  'null',
  '#N/A',
  '1.#INF',
];
const WORDS = [
  'note',
  '=SUM(A1:A9)',
  '"',
  '""',
  '<b>',
  '0x1F',
  'Infinity',
  '1,5',
  '1.5.2',
  '+',
  '--5',
  '\u00a0',
  '\u0000',
  '😀',
];

const captureMutations: Readonly<Record<string, Mutation>> = {
  'cell dropped': { kind: 'rows', apply: someCells(() => []) },
  'cell doubled': { kind: 'rows', apply: someCells((cell) => [cell, cell]) },
  'cell blanked': { kind: 'rows', apply: someCells(() => '') },
  'cell marked': { kind: 'rows', apply: someCells((_, random) => oneOf(random, MARKS)) },
  'cell a word': { kind: 'rows', apply: someCells((_, random) => oneOf(random, WORDS)) },
  'cells swapped': {
    kind: 'rows',
    apply: someRows((line, delimiter) => line.split(delimiter).reverse().join(delimiter)),
  },
  'row starts with a delimiter': { kind: 'rows', apply: someRows((line, delimiter) => delimiter + line) },
  'row ends with a delimiter': { kind: 'rows', apply: someRows((line, delimiter) => line + delimiter) },
  'row ends with a number': { kind: 'rows', apply: someRows((line, delimiter) => `${line}${delimiter}17`) },
  'row cut': {
    kind: 'rows',
    apply: someRows((line, _, random) => line.slice(0, whole(random, line.length + 1))),
  },
  'row doubled': { kind: 'rows', apply: someRows((line) => [line, line]) },
  'row lost': { kind: 'rows', apply: someRows(() => []) },
  'row blank': { kind: 'rows', apply: someRows((line) => ['', line]) },
  'row of words': { kind: 'rows', apply: someRows((line) => ['kettle switched on', line]) },
  'rows joined': { kind: 'rows', apply: someRows((line, delimiter) => `${line}${delimiter}${line}`) },
  'rows swapped': {
    kind: 'rows',
    apply: (lines, random) => {
      const at = whole(random, Math.max(1, lines.length - 1));
      const [a, b] = [lines[at], lines[at + 1]];
      return a === undefined || b === undefined ? lines : lines.with(at, b).with(at + 1, a);
    },
  },
  'delimiter of some rows': {
    kind: 'rows',
    apply: someRows((line, delimiter, random) =>
      line.replaceAll(delimiter, oneOf(random, [',', ';', '\t', ' ', '|'])),
    ),
  },
  'decimal comma in some rows': { kind: 'rows', apply: someRows((line) => line.replaceAll('.', ',')) },
  'quoted rows': { kind: 'rows', apply: someRows((line) => `"${line}"`) },
  'sign changed': {
    kind: 'values',
    apply: someCells((cell) => (cell.startsWith('-') ? cell.slice(1) : `-${cell}`)),
  },
  'digit changed': {
    kind: 'values',
    apply: someCells((cell, random) => cell.replace(/\d/, String(whole(random, 10)))),
  },
  'mark lost': { kind: 'values', apply: someCells((cell) => cell.replace('.', '')) },
  'exponent changed': {
    kind: 'values',
    apply: someCells((cell, random) => `${cell}e${whole(random, 9) - 4}`),
  },
  'huge number': { kind: 'values', apply: someCells((_, random) => oneOf(random, HUGE)) },
  'digits without end': { kind: 'values', apply: someCells((cell) => cell + '0'.repeat(3000)) },
  'head line lost': {
    kind: 'values',
    apply: (lines, random) => lines.toSpliced(whole(random, Math.min(4, lines.length)), 1),
  },
  'head number changed': {
    kind: 'values',
    apply: (lines, random) =>
      lines.map((line, i) =>
        i < 6 && random() < 0.3 ? line.replace(/\d[\d.e+-]*/i, oneOf(random, HUGE)) : line,
      ),
  },
  'setting added': {
    kind: 'values',
    apply: (lines, random) => [
      `${oneOf(random, ['Sample Interval', 'Increment', 'Sample Rate', 'Start', 'Record Length', 'Vertical Scale'])},${oneOf(random, [...HUGE, '1', '1e-6', '0'])}`,
      ...lines,
    ],
  },
  'blanks without end': {
    kind: 'file',
    apply: (lines, random) => lines.toSpliced(whole(random, 3), 0, `a${' '.repeat(3000)}b`),
  },
  'columns without end': {
    kind: 'rows',
    apply: someRows((line, delimiter, random) => line + delimiter.repeat(whole(random, 3000))),
  },
  'delimiter everywhere': {
    kind: 'file',
    apply: everywhere((text, random) =>
      text.replaceAll(oneOf(random, [',', ';', '\t']), oneOf(random, [',', ';', '\t', ' '])),
    ),
  },
  'decimal comma everywhere': { kind: 'file', apply: everywhere((text) => text.replaceAll('.', ',')) },
  'tail cut': {
    kind: 'file',
    apply: everywhere((text, random) => text.slice(0, whole(random, text.length + 1))),
  },
  'middle cut out': {
    kind: 'values',
    apply: (lines, random) => lines.toSpliced(whole(random, lines.length), whole(random, lines.length)),
  },
  'file twice': { kind: 'file', apply: (lines) => [...lines, ...lines] },
  'text below': { kind: 'file', apply: (lines) => [...lines, '', 'end of record', 'mean,3.2', 'rms,119.7'] },
};

const names = Object.keys(captureMutations);

/** Ways to turn the text into bytes again; the first is meant most of the time. */
const encoders: Readonly<Record<string, (text: string, random: Random) => Uint8Array>> = {
  'utf-8': (text) => new TextEncoder().encode(text),
  'byte order mark': (text) => new TextEncoder().encode(`\ufeff${text}`),
  'carriage returns': (text) => new TextEncoder().encode(text.replaceAll('\n', '\r')),
  pairs: (text) => new TextEncoder().encode(text.replaceAll('\n', '\r\n')),
  'utf-16': (text) => utf16(`\ufeff${text}`),
  'latin-1': (text) => Uint8Array.from(text, (character) => character.charCodeAt(0)),
  'bytes flipped': (text, random) => {
    const bytes = new TextEncoder().encode(text);
    const count = 1 + whole(random, 8);
    for (let i = 0; i < count && bytes.length > 0; i++)
      bytes[whole(random, bytes.length)]! ^= 1 << whole(random, 8);
    return bytes;
  },
};
const encoderNames = Object.keys(encoders);

function utf16(text: string): Uint8Array {
  const bytes = new Uint8Array(2 * text.length);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < text.length; i++) view.setUint16(2 * i, text.charCodeAt(i), true);
  return bytes;
}

/**
 * A damaged copy of a capture: one to three mutations, then one way of writing it.
 *
 * @param text - the capture; lines end in a line feed.
 * @param random - decides everything: the same numbers give the same mutant.
 * @remarks `kinds` holds `values` where a number was changed to another that may be meant, and with flipped bytes,
 * which may do the same: there a figure may move without a word.
 */
export function captureMutant(text: string, random: Random): CaptureMutant {
  const done: string[] = [];
  const kinds = new Set<MutationKind>();
  let lines: readonly string[] = text.split('\n');
  const count = 1 + whole(random, 3);
  for (let i = 0; i < count; i++) {
    const name = oneOf(random, names);
    const { kind, apply } = captureMutations[name]!;
    lines = apply(lines, random);
    done.push(name);
    kinds.add(kind);
  }
  const encoder = random() < 0.6 ? 'utf-8' : oneOf(random, encoderNames);
  const bytes = encoders[encoder]!(lines.join('\n'), random);
  done.push(encoder);
  kinds.add(encoder === 'bytes flipped' ? 'values' : 'file');
  return { bytes, done, kinds };
}
