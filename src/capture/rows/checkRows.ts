import { MeasureError } from '../../base/measureError.ts';
import type { Notice } from '../../base/notice.ts';
import { cleanText } from '../../bytes/cleanText.ts';
import type { MalformedRow } from '../../bytes/scanRows.ts';

const LEAST_ROWS = 16;
const MOST_MALFORMED_SHARE = 0.01;

/**
 * Whether there are enough rows, and few enough malformed ones among them.
 *
 * @returns a notice that names the lines of malformed rows, where there are any.
 * @throws MeasureError `rows.few` under 16 rows; `rows.malformed` where over 1 % are no rows.
 */
export function checkRows(rowCount: number, malformed: readonly MalformedRow[], firstLine: number): Notice[] {
  if (rowCount < LEAST_ROWS) {
    throw new MeasureError(
      'rows.few',
      `The file holds only ${rowCount} ${rowCount === 1 ? 'row' : 'rows'} of numbers.`,
      {
        line: firstLine,
        expected: `at least ${LEAST_ROWS} rows, and three cycles of the wave`,
        received: `${rowCount} ${rowCount === 1 ? 'row' : 'rows'}`,
        advice: 'save the waveform itself, one row a sample, not a table of measurements',
      },
    );
  }
  const [first] = malformed;
  if (first === undefined) return [];
  const found = first.reason ?? `"${cleanText(first.text, 40)}"`;
  if (malformed.length > MOST_MALFORMED_SHARE * rowCount) {
    throw new MeasureError('rows.malformed', `${malformed.length} of ${rowCount} rows can't be read.`, {
      line: first.line,
      expected: 'rows of numbers like those around it',
      received: found,
      advice: 'save the waveform again, or take the broken rows out in a text editor',
    });
  }
  const lines = malformed.slice(0, 3).map((row) => row.line);
  const more = malformed.length > lines.length ? ` and ${malformed.length - lines.length} more` : '';
  const [subject, are, rows] = malformed.length === 1 ? ['Line', 'is', 'a row'] : ['Lines', 'are', 'rows'];
  return [
    {
      code: 'rows.malformed',
      message: `${subject} ${lines.join(', ')}${more} can't be read as ${rows} of numbers (${found}) and ${are} left out.`,
    },
  ];
}
