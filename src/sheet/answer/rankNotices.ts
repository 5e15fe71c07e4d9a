import type { Notice } from '../../base/notice.ts';

/**
 * What a doubt is about, by its code, worst first: what may make every figure wrong, then what makes some of
 * them unsure, then what was merely assumed or left out.
 */
const worstFirst: readonly RegExp[] = [
  /^scale\./,
  /^dc\./,
  /^wave\.(clipped|overRange)$/,
  /^value\./,
  /^frequency\./,
  /^time\.(contradicts|disagrees|assumed|uneven)/,
  /^unit\./,
  /gap/,
  /^wave\.drifts$|^span\./,
  /^cycles\./,
  /^rate\./,
  /^resolution\./,
  /^coupling\./,
  /^nominal\./,
  /^time\./,
  /^rows\./,
];

/** Notices, worst first; those of one rank, and those whose topic is unknown, keep their order (the latter last). */
export function rankNotices(notices: readonly Notice[]): Notice[] {
  const rank = ({ code }: Notice): number => {
    const index = worstFirst.findIndex((topic) => topic.test(code));
    return index < 0 ? worstFirst.length : index;
  };
  return [...notices].sort((a, b) => rank(a) - rank(b));
}
