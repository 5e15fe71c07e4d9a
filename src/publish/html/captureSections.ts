import type { CurrentFigures, MeasureResult, VoltageFigures } from '../../assay/measureDocument.ts';
import type { ClaimResult } from '../../judge/claims/claim.ts';
import type { Finding } from '../../judge/limits/findings.ts';
import { claimValueText } from '../../words/claimWords.ts';
import { courseSentence, stepRows } from '../../words/courseWords.ts';
import { figureRows } from '../../words/figureRows.ts';
import { findingText, worstFindings } from '../../words/limitWords.ts';
import { inputRows, powerRows } from '../../words/loadPhrase.ts';
import { decimalText, uncertaintyDecimals } from '../../words/numbers.ts';
import { storyWords } from '../../words/storyWords.ts';
import { dataTable, figureTable, html, type Markup, outcomeMark } from './html.ts';

/** Claims under a heading; nothing where there is none. */
export function claimsSection(claims: readonly ClaimResult[]): Markup {
  if (claims.length === 0) return html``;
  return html`<section><h2>Claims</h2>${claimsTable(claims, 'How sure: that the claim is met')}</section>
`;
}

/**
 * Claims as a table: what was claimed, what was found, how it stands.
 *
 * @param at - where it was found, after the value: ` at 600 W`.
 */
export function claimsTable<T extends ClaimResult>(
  claims: readonly T[],
  caption: string,
  at: (claim: T) => string = () => '',
): Markup {
  return dataTable({
    caption,
    columns: [
      { heading: 'Claim' },
      { heading: 'Found' },
      { heading: 'Outcome' },
      { heading: 'How sure', isNumber: true },
    ],
    rows: claims.map((claim) => [
      claim.text,
      claim.value === claim.text ? '' : `${claimValueText(claim).value}${at(claim)}`,
      outcomeMark(claim.outcome),
      { shown: sureText(claim.probability), sort: claim.probability },
    ]),
  });
}

/** A probability is never shown as certain. */
function sureText(probability: number | null): string {
  if (probability === null) return '';
  const percent = 100 * probability;
  if (percent > 99) return 'over 99\u00a0%';
  return percent < 1 ? 'under 1\u00a0%' : `${Math.round(percent)}\u00a0%`;
}

/** Every figure of a capture, a table a quantity. */
export function figuresSection(result: MeasureResult): Markup {
  const { voltage, current, power, input } = result;
  const stretch = storyWords(result)?.stretch;
  return html`<section><h2>Figures${stretch === undefined ? '' : ` ${stretch}`}</h2><p><small>± reads: about 95 % sure that the true value lies within</small></p>
${voltage !== undefined && figureTable(`Voltage, channel ${voltage.channel}`, figureRows(voltage, 'V'))}${
  current !== undefined && figureTable(`Current, channel ${current.channel}`, figureRows(current, 'A'))
}${power !== undefined && figureTable(`Power (IEEE 1459), current in ${power.channel}`, powerRows(power))}${
  input !== undefined &&
  figureTable(`DC input, ${input.voltageChannel} and ${input.currentChannel}`, inputRows(input))
}</section>
`;
}

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

/** The harmonics of voltage and current, a table each; nothing where there is none. */
export function harmonicsSection({ voltage, current }: MeasureResult): Markup {
  const tables = [
    ...(voltage === undefined ? [] : harmonicTables(voltage, 'Voltage')),
    ...(current === undefined ? [] : harmonicTables(current, 'Current')),
  ];
  if (tables.length === 0) return html``;
  return html`<section><h2>Harmonics</h2>${tables}</section>
`;
}

function harmonicTables({ channel, harmonics }: VoltageFigures | CurrentFigures, quantity: string): Markup[] {
  const [first] = harmonics;
  if (first === undefined) return [];
  const unit = 'rmsV' in first ? 'V' : 'A';
  const table = dataTable({
    caption: `${quantity}, channel ${channel}; phase against a rising zero of the fundamental`,
    columns: [
      { heading: 'Order', isNumber: true },
      { heading: `RMS, ${unit}`, isNumber: true },
      { heading: '% of fundamental', isNumber: true },
      { heading: '±', isNumber: true },
      { heading: 'Phase, °', isNumber: true },
    ],
    rows: harmonics.map((harmonic) => {
      const { order, percent, uncertaintyPercent = null, phaseDeg } = harmonic;
      const rms = 'rmsV' in harmonic ? harmonic.rmsV : harmonic.rmsA;
      const decimals = uncertaintyPercent === null ? 3 : Math.min(4, uncertaintyDecimals(uncertaintyPercent));
      return [
        { shown: order, sort: order },
        { shown: decimalText(rms, 4), sort: rms },
        { shown: decimalText(percent, decimals), sort: percent },
        {
          shown: uncertaintyPercent === null ? '' : decimalText(uncertaintyPercent, decimals),
          sort: uncertaintyPercent,
        },
        { shown: decimalText(phaseDeg, 1), sort: phaseDeg },
      ];
    }),
  });
  return [table];
}

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

/** A heading with sentences under it; nothing where there is none. */
export function listSection(heading: string, sentences: readonly string[]): Markup {
  if (sentences.length === 0) return html``;
  return html`<section><h2>${heading}</h2><ul class="plain">
${sentences.map((sentence) => html`<li>${sentence}</li>\n`)}</ul></section>
`;
}
