import type { ClaimResult } from '../../verdict/measureDocument.ts';
import { besideLimit } from '../numbers/besideLimit.ts';
import { quantityParts } from '../numbers/quantityParts.ts';
import { withUnit } from '../numbers/withUnit.ts';

/** What was found for a claim: "RMS voltage 109.2 V", "distorted sine", or why there is nothing. */
export function claimValueText(claim: ClaimResult): string {
  const { value, quantity, limit, reason } = claim;
  if (value === null) return reason ?? 'nothing measured';
  if (typeof value === 'string') return value;
  const { name, unit } = quantityParts(quantity);
  return `${name} ${withUnit(besideLimit(value, limit ?? {}), unit)}`;
}
