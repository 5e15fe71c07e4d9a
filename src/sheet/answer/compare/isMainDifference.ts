import type { Difference } from '../../../bench/compare/compareDocument.ts';

const main = ['rmsV', 'rmsA', 'frequencyHz', 'crestFactor', 'thdPercent', 'thdNoisePercent', 'activeW'];

/** Whether a difference is of a figure that is asked about first. */
export function isMainDifference({ key }: Difference): boolean {
  return main.includes(key.split('.')[1] ?? '');
}
