import type { ClaimResult } from '../../verdict/measureDocument.ts';
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
export function claimValueText({ value, quantity, limit, outcome, reason }: ClaimResult): ClaimValue {
  if (value === null || outcome === 'not judged') {
    const why = reason ?? 'nothing measured';
    return { value: why, named: why };
  }
  if (typeof value === 'string') return { value, named: value };
  const { name, unit } = quantities[quantity] ?? { name: quantity, unit: '' };
  const text = withUnit(besideLimit(value, limit ?? {}), unit);
  return { value: text, named: `${name} ${text}` };
}
