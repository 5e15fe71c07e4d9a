import type { Notice } from '../../base/notice.ts';

/**
 * What a doubt is about, worst first: what may make every figure wrong, then what makes some of them
 * unsure, then what was merely assumed. The topic is the code's first word or its whole.
 */
const worstFirst: readonly RegExp[] = [
  /^scale\b/,
  /clip/,
  /^time\b/,
  /gap|split/,
  /drift|steady|step/,
  /few|cycles|short/,
  /rate|bandwidth|alias/,
  /resolution|coarse|bits|noise/,
  /coupled|coupling/,
  /^nominal\b/,
  /^unit\b/,
];

/** Notices, worst first; those of one rank, and those whose topic is unknown, keep their order (the latter last). */
export function rankNotices(notices: readonly Notice[]): Notice[] {
  const rank = ({ code }: Notice): number => {
    const index = worstFirst.findIndex((topic) => topic.test(code));
    return index < 0 ? worstFirst.length : index;
  };
  return [...notices].sort((a, b) => rank(a) - rank(b));
}
