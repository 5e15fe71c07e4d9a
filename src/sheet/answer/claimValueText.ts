import type { ClaimResult, Limit } from '../../verdict/measureDocument.ts';
import { besideLimit } from '../numbers/besideLimit.ts';
import { withUnit } from '../numbers/withUnit.ts';

/** A claim names its quantity by its key in the document. */
const quantities: Readonly<Record<string, { readonly name: string; readonly unit: string }>> = {
  rmsV: { name: 'RMS voltage', unit: 'V' },
  frequencyHz: { name: 'frequency', unit: 'Hz' },
  thdPercent: { name: 'THD', unit: '%' },
  crestFactor: { name: 'crest factor', unit: '' },
  powerW: { name: 'power', unit: 'W' },
  transferS: { name: 'transfer time', unit: 's' },
};

/** What was found for a claim. */
export interface ClaimValue {
  /** "109.2 V", "distorted sine", or why there is nothing to judge. */
  readonly value: string;
  /** The same with its name: "RMS voltage 109.2 V". */
  readonly named: string;
}

/** Puts what was found for a claim into words. */
export function claimValueText({
  text: claimed,
  value,
  quantity,
  limit,
  outcome,
  reason,
}: ClaimResult): ClaimValue {
  if (value === null || outcome === 'not judged') {
    const why = reason ?? 'nothing measured';
    return { value: why, named: why };
  }
  // What became of a load tells more than its watts.
  if (reason !== undefined && (quantity === 'powerW' || quantity === 'surgeW'))
    return { value: reason, named: reason };
  if (typeof value === 'string') return { value, named: value };
  const { name, unit } = quantities[quantity] ?? { name: quantity, unit: '' };
  const found =
    unit === 's' ? timeText(value, limit ?? {}, claimed) : withUnit(besideLimit(value, limit ?? {}), unit);
  return { value: found, named: `${name} ${found}` };
}

/** A time in the unit that it was claimed in. */
function timeText(valueS: number, limit: Limit, claimed: string): string {
  if (!/\d\s*ms\b/i.test(claimed)) return withUnit(besideLimit(valueS, limit), 's');
  const inMs = (seconds: number): number => Number((1000 * seconds).toPrecision(12));
  const { min, max } = limit;
  const limitMs = {
    ...(min !== undefined && { min: inMs(min) }),
    ...(max !== undefined && { max: inMs(max) }),
  };
  return withUnit(besideLimit(1000 * valueS, limitMs), 'ms');
}
