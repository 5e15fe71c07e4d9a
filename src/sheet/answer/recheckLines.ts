import { cleanText } from '../cleanText.ts';
import type { RecheckDocument } from '../recheck/recheckDocument.ts';
import { breakLines } from './breakLines.ts';
import { terminalText } from './terminalText.ts';

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
