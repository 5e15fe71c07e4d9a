import { amountText } from '../../base/amountText.ts';
import type { Notice } from '../../base/notice.ts';
import type { StatedInterval, TimeSettings } from '../head/timeSettings.ts';
import { agreementsOf } from './reconcileInterval.ts';

/** Settings that print three digits and mean the same interval lie within this. */
const ROUNDED_WITHIN = 0.01;

/**
 * Settles a head that states several sampling intervals: the one that agrees with most of the rest counts (the time
 * column twice, a stated span, the divisions of the screen, the other statements), the first where none does better.
 *
 * @param columnS - the interval of the time column; null where there is none.
 * @param sampleCount - samples in the record.
 * @returns the settings with that interval, and a notice that names the contradiction where there is one.
 */
export function settledInterval(
  settings: TimeSettings,
  columnS: number | null,
  sampleCount: number,
): { readonly settings: TimeSettings; readonly notices: readonly Notice[] } {
  const { stated } = settings;
  const [first] = stated;
  const contrary = stated.find(({ intervalS }) => !agree(intervalS, first!.intervalS));
  if (first === undefined || contrary === undefined) return { settings, notices: [] };
  const support = ({ intervalS }: StatedInterval): number =>
    (columnS !== null && agree(intervalS, columnS) ? 2 : 0) +
    agreementsOf(settings, intervalS, sampleCount) +
    stated.filter((other) => agree(intervalS, other.intervalS)).length;
  const best = stated.reduce((most, next) => (support(next) > support(most) ? next : most));
  const isSupported = stated.every(
    (other) => agree(other.intervalS, best.intervalS) || support(other) < support(best),
  );
  const says = ({ key, intervalS }: StatedInterval): string =>
    `"${key}" means ${amountText(intervalS, 's', 4)}`;
  const why = isSupported ? 'agrees with the rest of the file and counts' : 'counts, as nothing else decides';
  return {
    settings: { ...settings, intervalS: best.intervalS },
    notices: [
      {
        code: 'time.contradicts',
        message: `The settings in the file contradict each other on the time between samples: ${says(first)}, ${says(contrary)}. "${best.key}" ${why}. Check that the frequency makes sense.`,
      },
    ],
  };
}

function agree(a: number, b: number): boolean {
  return Math.abs(a / b - 1) <= ROUNDED_WITHIN;
}
