import type { MeasureResult } from '../../../verdict/measureDocument.ts';
import { courseSentence } from '../../answer/courseSentence.ts';
import { stepRows } from '../../answer/stepRows.ts';
import { dataTable } from '../dataTable.ts';
import { html, type Markup } from '../html.ts';

/** What changes along a record: in sentences, and each load step as a table; nothing for a steady one. */
export function courseSection(result: MeasureResult): Markup {
  const course = courseSentence(result);
  if (course === null) return html``;
  const steps = result.steps.map((step, i) =>
    dataTable({
      caption: `Load step ${i + 1}`,
      columns: [{ heading: 'Quantity' }, { heading: 'Value' }],
      rows: stepRows(step),
    }),
  );
  return html`<section><h2>Along the record</h2><p>${course}</p>${steps}</section>
`;
}
