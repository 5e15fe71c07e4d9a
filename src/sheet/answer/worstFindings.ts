import type { Finding } from '../../verdict/measureDocument.ts';

/**
 * Findings, most telling first: what fails, what probably fails, what lies outside for information, then what only
 * probably holds, then what holds. Among equals a limit from memory stands behind a public one; then THD, RMS voltage
 * and frequency before the rest, and single harmonics, which follow from the whole, last; then by the share of the limit
 * that is left.
 *
 * @remarks A harmonic that uses less than half of its limit stands behind all that: it says nothing beside the THD, even
 * where its doubt is as large as so small a limit. A limit for another place than an outlet stands last of all.
 */
export function worstFindings(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) =>
      Number(a.elsewhere ?? false) - Number(b.elsewhere ?? false) ||
      severity(a) - severity(b) ||
      Number(a.provenance === 'memory') - Number(b.provenance === 'memory') ||
      rank(a) - rank(b) ||
      relativeMargin(a) - relativeMargin(b),
  );
}

function severity(finding: Finding): number {
  const { outcome, side } = finding;
  if (isTinyHarmonic(finding)) return 6;
  if (outcome === 'information') return side === 'outside' ? 2 : 5;
  return { fail: 0, 'conditional fail': 1, 'conditional pass': 3, pass: 4 }[outcome];
}

/** What a reader would quote, most likely first; outside, only that single harmonics follow from the whole. */
function rank({ quantity, side }: Finding): number {
  if (quantity.startsWith('harmonic ')) return 4;
  if (side === 'outside') return 0;
  const known = ['THD ', 'RMS voltage ', 'frequency '].findIndex((start) => quantity.startsWith(start));
  return known < 0 ? 3 : known;
}

function isTinyHarmonic({ quantity, side, margin, limit }: Finding): boolean {
  return quantity.startsWith('harmonic ') && side === 'inside' && margin > (limit.max ?? 0) / 2;
}

/** Margin as a share of the limit's size, so that volts and percent can be ranked together. */
function relativeMargin({ margin, limit }: Finding): number {
  const size = Math.max(Math.abs(limit.max ?? 0), Math.abs(limit.min ?? 0));
  return size === 0 ? margin : margin / size;
}
