import type { Finding } from '../../verdict/measureDocument.ts';

/**
 * Findings, worst first: what fails, what probably fails, what lies outside for information, then what is
 * inside, each by its share of the limit. A limit from memory never stands before a public one that is as bad;
 * outside, a figure of the whole wave (THD, voltage) stands before single harmonics, which follow from it.
 */
export function worstFindings(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) =>
      severity(a) - severity(b) ||
      Number(a.provenance === 'memory') - Number(b.provenance === 'memory') ||
      Number(isHarmonicOutside(a)) - Number(isHarmonicOutside(b)) ||
      relativeMargin(a) - relativeMargin(b),
  );
}

function severity({ outcome, side }: Finding): number {
  if (outcome === 'information') return side === 'outside' ? 2 : 5;
  return { fail: 0, 'conditional fail': 1, 'conditional pass': 3, pass: 4 }[outcome];
}

function isHarmonicOutside({ quantity, side }: Finding): boolean {
  return side === 'outside' && quantity.startsWith('harmonic ');
}

/** Margin as a share of the limit's size, so that volts and percent can be ranked together. */
function relativeMargin({ margin, limit }: Finding): number {
  const size = Math.max(Math.abs(limit.max ?? 0), Math.abs(limit.min ?? 0));
  return size === 0 ? margin : margin / size;
}
