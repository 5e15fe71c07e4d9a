import type { Finding } from '../../verdict/measureDocument.ts';
import { findingText } from './findingText.ts';
import { outcomeWords } from './outcomeWords.ts';
import { worstFindings } from './worstFindings.ts';

/**
 * The strongest public findings in a sentence or two; a limit from memory never stands here, nor one for another place
 * than an outlet.
 *
 * "Outside 2 of 27 reference limits, worst: harmonic 15 at 0.65 %, limit at most 0.5 % (EN 50160:2010, 4.2.5)."
 *
 * @returns null where no public limit was applied.
 */
export function findingSentence(findings: readonly Finding[]): string | null {
  const judged = worstFindings(findings).filter(
    ({ provenance, elsewhere }) => provenance === 'public' && elsewhere !== true,
  );
  const [worst] = judged;
  if (worst === undefined) return null;
  const outside = judged.filter(({ side }) => side === 'outside').length;
  const count = judged.length === 1 ? '1 reference limit' : `${judged.length} reference limits`;
  const sum =
    outside === 0
      ? `Inside ${count}${judged.length === 1 ? '' : ', among them'}`
      : `Outside ${outside} of ${count}, worst`;
  const { name, value, limit, source } = findingText(worst);
  const doubt = worst.outcome.startsWith('conditional') ? `, ${outcomeWords(worst.outcome)}` : '';
  return `${sum}: ${name.toLowerCase().replace(/^(rms|thd)/, (word) => word.toUpperCase())} at ${value}, limit ${limit}${doubt} (${source}).`;
}
