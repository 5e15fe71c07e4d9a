import type { Finding } from '../../verdict/measureDocument.ts';
import { besideLimit } from '../numbers/besideLimit.ts';
import { limitText } from '../numbers/limitText.ts';
import { marginText } from '../numbers/marginText.ts';
import { quantityParts } from '../numbers/quantityParts.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { capitalised } from './capitalised.ts';
import { standardText } from './standardText.ts';

/** A finding's cells in text. */
export interface FindingText {
  /** `Harmonic 15`. */
  readonly name: string;
  /** `0.62 %`, `9.8 % of nominal`. */
  readonly value: string;
  /** `at most 0.5 %`. */
  readonly limit: string;
  /** `outside by 0.12 points`. */
  readonly margin: string;
  /** `EN 50160:2010, 4.2.5`. */
  readonly source: string;
  /** `Limit from memory` where it is, else `Limit`: to be put before it. */
  readonly limitName: string;
}

/** Puts a finding into words. */
export function findingText(finding: Finding): FindingText {
  const { name, unit, base } = quantityParts(finding.quantity);
  const standard = standardText(finding.standard, finding.edition);
  const value = withUnit(besideLimit(finding.value, finding.limit), unit);
  return {
    name: capitalised(name),
    value: base === '' ? value : `${value} ${base}`,
    limit: limitText(finding.limit, unit),
    margin: marginText(finding, unit),
    source: finding.clause === '' ? standard : `${standard}, ${finding.clause}`,
    limitName: finding.provenance === 'memory' ? 'Limit from memory' : 'Limit',
  };
}
