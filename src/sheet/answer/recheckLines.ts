import { cleanText } from '../cleanText.ts';
import type { RecheckDocument } from '../recheck/recheckDocument.ts';
import { breakLines } from './breakLines.ts';
import { terminalText } from './terminalText.ts';

const mostDifferences = 12;
const indent = '  ';

/** What a recheck found, for the terminal. */
export function recheckLines(
  { sheet, captures, same, differences }: RecheckDocument,
  { width }: { readonly width: number },
): readonly string[] {
  const lines = (text: string, lead = indent): string[] =>
    breakLines(cleanText(text), { width, most: 4, lead, indent: ' '.repeat(lead.length) });
  const again =
    captures.length === 1 ? cleanText(captures[0] ?? '') : `${captures.length} captures of this sheet`;
  const hidden = differences.length - mostDifferences;
  const found = same
    ? lines('The same: the picture is the one that its data draw.')
    : [
        ...lines(differences.length === 1 ? 'One thing differs.' : `${differences.length} things differ.`),
        ...differences.slice(0, mostDifferences).flatMap(({ message }) => lines(message, '  - ')),
        ...(hidden > 0 ? lines(`and ${hidden} more (--json lists all)`, '  - ') : []),
      ];
  const basis =
    captures.length === 0
      ? 'Checked against itself. Only its capture tells whether its data are true: name that too.'
      : `Measured again from ${again}, as the sheet says it was measured${same ? ': every value agrees' : ''}.`;
  return [cleanText(sheet), ...found, ...lines(basis)].map(terminalText);
}
