import type { Finding } from '../../verdict/measureDocument.ts';
import { decimalText } from './decimalText.ts';
import { uncertaintyDecimals } from './uncertaintyDecimals.ts';
import { withUnit } from './withUnit.ts';

/**
 * The distance to the nearest limit in words: "outside by 0.12 points", "inside by 6.5 V".
 *
 * @param unit - the finding's unit as printed; percent become points, which nobody takes for a share of the limit.
 */
export function marginText(finding: Pick<Finding, 'margin' | 'side'>, unit: string): string {
  const distance = Math.abs(finding.margin);
  if (distance === 0) return 'on the limit';
  const decimals = Math.min(Math.max(uncertaintyDecimals(distance), distance < 1 ? 2 : 1), 4);
  const points = unit === '%' ? 'points' : unit;
  return `${finding.side} by ${withUnit(decimalText(distance, decimals), points)}`;
}
