import type { Finding } from '../../verdict/measureDocument.ts';
import { standardText } from '../answer/standardText.ts';

/** One standard's limits for single harmonics, in percent of the fundamental, as far as findings tell them. */
export interface HarmonicLimits {
  /** `EN 50160:2010`. */
  readonly source: string;
  readonly provenance: Finding['provenance'];
  readonly limitPercent: ReadonlyMap<number, number>;
}

/**
 * The set of harmonic limits to draw over the bars: the public standard that limits most orders, else the
 * one from memory that does. Of several, the last: findings go from the standards of the source itself to those
 * of the networks, which more readers know.
 *
 * @returns null where no finding limits a single harmonic.
 */
export function harmonicLimits(findings: readonly Finding[]): HarmonicLimits | null {
  const sets = new Map<string, { provenance: Finding['provenance']; limits: Map<number, number> }>();
  for (const { quantity, standard, edition, provenance, limit } of findings) {
    const order = Number(/^harmonic (\d+) \(% of fundamental\)$/.exec(quantity)?.[1] ?? Number.NaN);
    if (!Number.isInteger(order) || limit.max === undefined) continue;
    const source = standardText(standard, edition);
    const set = sets.get(source) ?? { provenance, limits: new Map<number, number>() };
    set.limits.set(order, limit.max);
    sets.set(source, set);
  }
  const [best] = [...sets]
    .reverse()
    .sort(
      ([, a], [, b]) =>
        Number(a.provenance === 'memory') - Number(b.provenance === 'memory') ||
        b.limits.size - a.limits.size,
    );
  if (best === undefined) return null;
  const [source, { provenance, limits }] = best;
  return { source, provenance, limitPercent: limits };
}
