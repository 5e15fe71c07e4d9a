import type { Finding } from '../../verdict/measureDocument.ts';
import { decimalText } from './decimalText.ts';
import { uncertaintyDecimals } from './uncertaintyDecimals.ts';
import { withUnit } from './withUnit.ts';

/**
 * The distance to the nearest limit in words: "0.12 % outside", "1.9 % inside".
 *
 * @param unit - the finding's unit as printed.
 */
export function marginText(finding: Pick<Finding, 'margin' | 'side'>, unit: string): string {
  const distance = Math.abs(finding.margin);
  if (distance === 0) return 'on the limit';
  const decimals = Math.min(Math.max(uncertaintyDecimals(distance), distance < 1 ? 2 : 1), 4);
  return `${withUnit(decimalText(distance, decimals), unit)} ${finding.side}`;
}
