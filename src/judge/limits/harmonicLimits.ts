import type { Nominal } from '../nominal/mainsNominals.ts';
import { compatibilityLevels, iec61000 } from './iec61000.ts';
import type { LimitProvenance } from './limitTable.ts';
import { ieee519, ieee519Harmonics } from './northAmerica.ts';

interface HarmonicLimits {
  readonly standard: string;
  readonly edition: string;
  readonly provenance: LimitProvenance;
  /** By order, 2 to 50. */
  readonly limitPercent: ReadonlyMap<number, number>;
}

/** The one set of limits to draw above a spectrum: IEEE 519 for a 60 Hz outlet, IEC 61000-2-2 otherwise. */
export function harmonicLimits(nominal: Nominal | null): HarmonicLimits {
  const [table, row] =
    nominal?.frequencyHz === 60 ? [ieee519, ieee519Harmonics] : [iec61000, compatibilityLevels];
  return {
    standard: table.standard,
    edition: table.edition,
    provenance: row.provenance,
    limitPercent: row.limitPercent,
  };
}
