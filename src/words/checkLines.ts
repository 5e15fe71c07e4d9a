import type { Notice } from '../base/notice.ts';
import type { CheckedFigure, CheckedWave } from '../synth/selfcheck.ts';
import { breakLines } from './courseWords.ts';
import { significantText, withUnit } from './numbers.ts';
import { cleanText, terminalText } from './text.ts';

const mostDifferences = 12;
/** Captures named of each unit and state. */
const mostNamed = 12;
const indent = '  ';

/** What a recheck found, for the terminal. */
export function recheckLines(
  document: RecheckDocument,
  { width }: { readonly width: number },
): readonly string[] {
  const { sheet, captures, same, differences } = document;
  const lines = (text: string, lead = indent): string[] =>
    breakLines(cleanText(text), { width, lead, indent: ' '.repeat(lead.length) });
  const hidden = differences.length - mostDifferences;
  const found = same
    ? lines('The same: the file is, sign by sign, the one that its data give.')
    : [
        ...lines(differences.length === 1 ? 'One thing differs.' : `${differences.length} things differ.`),
        ...differences.slice(0, mostDifferences).flatMap(({ message }) => lines(message, '  - ')),
        ...(hidden > 0 ? lines(`and ${hidden} more (--json lists all)`, '  - ') : []),
      ];
  const basis =
    captures.length === 0
      ? lines('Checked against itself. Only its capture tells whether its data are true: name that too.')
      : measuredLines(document, lines);
  return [cleanText(sheet), ...found, ...basis].map(terminalText);
}

function measuredLines(
  { captures, carried, same }: RecheckDocument,
  lines: (text: string, lead?: string) => string[],
): readonly string[] {
  const isEach = carried.every(({ state }) => state === 'measured again');
  const agreement = !same ? '' : isEach ? ': every value agrees' : ': what could be measured again agrees';
  const again = captures.length === 1 ? (captures[0] ?? '') : `${captures.length} captures of this sheet`;
  return [
    ...lines(`Measured again from ${again}, as the sheet says it was measured${agreement}.`),
    ...(carried.length < 2 ? [] : stateSentences(carried).flatMap((text) => lines(text, '  - '))),
  ];
}

/** "red, measured again: 0w.csv, 300w.csv." for each unit and state. */
function stateSentences(carried: RecheckDocument['carried']): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const { unit, file, state } of carried) {
    const key = `${unit === undefined ? '' : `${unit}, `}${state}`;
    groups.set(key, [...(groups.get(key) ?? []), file]);
  }
  return [...groups].map(([key, files]) => {
    const more = files.length - mostNamed;
    return `${key}: ${files.slice(0, mostNamed).join(', ')}${more > 0 ? ` and ${more} more` : ''}.`;
  });
}

/** The JSON of `recheck --json`. */
export interface RecheckDocument {
  readonly schema: 'sineassay/recheck@1';
  readonly sheet: string;
  /** Captures that were measured again; empty: the sheet was checked against itself alone. */
  readonly captures: readonly string[];
  /** Each capture that stands behind the sheet, by its result and by what was told. */
  readonly carried: readonly CheckedCapture[];
  /** The file is, sign by sign, the one that its data give, and no capture that was measured again gives otherwise. */
  readonly same: boolean;
  /** What differs, each in a sentence. */
  readonly differences: readonly Notice[];
}

export interface CheckedCapture {
  /** Of a bench test: whose capture it is. */
  readonly unit?: string;
  readonly file: string;
  /** Null where the sheet doesn't carry it. */
  readonly sha256: string | null;
  /** `earlier`: its results were taken over from another day, and can't be measured again from this sheet. */
  readonly state: 'measured again' | 'earlier' | 'missing';
}

/** One capture of a selfcheck in a line: its kind, and each figure's error over what it claims. */
export function selfcheckLine(capture: CheckedWave): string {
  const { wave, sampleRateHz, cycles, bits, kind, figures, holds } = capture;
  const setting = `${wave}, ${sampleRateHz / 1000} kS/s, ${cycles} cycles, ${bits} bits`;
  const shares = figures.map(shareText).join('  ');
  const wrong = kind.found === kind.truth ? '' : `  told as ${kind.found}, is ${kind.truth}`;
  return terminalText(`${holds ? 'inside ' : 'OUTSIDE'} ${setting.padEnd(54)} ${shares}${wrong}`);
}

function shareText({ figure, unit, truth, found, uncertainty }: CheckedFigure): string {
  const error = significantText(found - truth, 2);
  return `${figure} ${error} of ±${withUnit(significantText(uncertainty, 2), unit)}`;
}
