import type { Finding } from '../../../verdict/measureDocument.ts';
import { findingText } from '../../answer/findingText.ts';
import { worstFindings } from '../../answer/worstFindings.ts';
import { dataTable } from '../dataTable.ts';
import { html, type Markup } from '../html.ts';
import { outcomeMark } from '../outcomeMark.ts';

/** Every finding against reference limits, worst first; nothing where there is none. */
export function findingsSection(findings: readonly Finding[]): Markup {
  if (findings.length === 0) return html``;
  const table = dataTable({
    caption:
      'Worst first. Reference limits, not compliance: what a limit’s own statistics ask for is more than one capture',
    columns: [
      { heading: 'Quantity' },
      { heading: 'Found', isNumber: true },
      { heading: 'Limit' },
      { heading: 'Margin' },
      { heading: 'Outcome' },
      { heading: 'Source' },
    ],
    rows: worstFindings(findings).map((finding) => {
      const text = findingText(finding);
      return [
        text.name,
        { shown: text.value, sort: finding.value },
        text.limit,
        { shown: text.margin, sort: finding.margin },
        finding.outcome === 'information' ? `${finding.side}, for information` : outcomeMark(finding.outcome),
        html`${text.source}${finding.provenance === 'memory' && ' (from memory)'}${
          finding.remark !== undefined && html` <small>${finding.remark}</small>`
        }`,
      ];
    }),
  });
  return html`<section><h2>Against reference limits</h2>${table}</section>
`;
}
