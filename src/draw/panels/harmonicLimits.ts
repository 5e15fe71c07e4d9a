import type { Finding } from '../../judge/limits/findings.ts';
import { isForNominal, type LimitTable } from '../../judge/limits/limitTable.ts';
import type { Nominal } from '../../judge/nominal/mainsNominals.ts';
import { standardText } from '../../words/limitWords.ts';

/** One standard's limits for single harmonics. */
export interface HarmonicLimits {
  /** `EN 50160:2010`. */
  readonly source: string;
  readonly provenance: Finding['provenance'];
  /** Of the fundamental, by order. */
  readonly limitPercent: ReadonlyMap<number, number>;
}

/**
 * The set of harmonic limits to draw over the bars: of the tables that apply, the public one that limits most
 * orders, else the one from memory that does. Of several, the last: tables go from the standards of the source
 * itself to those of the networks, which more readers know.
 *
 * @returns null where no table limits harmonics in percent of the fundamental, which is what the bars show.
 */
export function harmonicLimits(
  tables: readonly LimitTable[],
  nominal: Nominal | null,
): HarmonicLimits | null {
  const sets = tables
    .filter(({ appliesTo }) => isForNominal(appliesTo, nominal))
    .flatMap(({ standard, edition, harmonics }) =>
      harmonics?.unit === '% of fundamental'
        ? [{ source: standardText(standard, edition), ...harmonics }]
        : [],
    );
  const [best] = sets
    .reverse()
    .sort(
      (a, b) =>
        Number(a.provenance === 'memory') - Number(b.provenance === 'memory') ||
        b.limitPercent.size - a.limitPercent.size,
    );
  if (best === undefined) return null;
  const { source, provenance, limitPercent } = best;
  return { source, provenance, limitPercent };
}
