import type { Notice } from '../../base/notice.ts';

/** What may make every figure wrong, by its code, worst first. */
const grave: readonly RegExp[] = [
  /^channels?\.(?!others|currents|currentOnly|unmeasured)/,
  /^scale\./,
  /^dc\./,
  /^wave\.(clipped|overRange)$|^digitiser\.clipped$/,
  /^frequency\./,
  /^time\.(disagrees|contradicts)/,
];

/** Then what makes some of them unsure, then what was merely assumed or left out. */
const others: readonly RegExp[] = [
  /^load\.|^current\.|^power\./,
  /^value\./,
  /^kind\./,
  /^time\.(assumed|uneven)/,
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

const worstFirst = [...grave, ...others];

/** Whether a doubt may make every figure wrong: such a one is told wherever a figure is shown. */
export function isGrave({ code }: Notice): boolean {
  return grave.some((topic) => topic.test(code));
}

/** Notices, worst first; those of one rank, and those whose topic is unknown, keep their order (the latter last). */
export function rankNotices(notices: readonly Notice[]): Notice[] {
  const rank = ({ code }: Notice): number => {
    const index = worstFirst.findIndex((topic) => topic.test(code));
    return index < 0 ? worstFirst.length : index;
  };
  return [...notices].sort((a, b) => rank(a) - rank(b));
}
