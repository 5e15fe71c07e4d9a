import type { ClaimResult } from '../../../verdict/measureDocument.ts';
import { claimValueText } from '../../answer/claimValueText.ts';
import { dataTable } from '../dataTable.ts';
import { html, type Markup } from '../html.ts';
import { outcomeMark } from '../outcomeMark.ts';

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
