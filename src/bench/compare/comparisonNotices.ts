import type { Notice } from '../../base/notice.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';

/** Rates apart by more than this see different parts of the noise and of the edges. */
const RATE_RATIO = 2;

/**
 * What makes two captures hard to compare.
 *
 * @param isUnbudgeted - one instrument was told, and what the uncertainties are made of is not at hand.
 */
export function comparisonNotices(
  a: MeasureResult,
  b: MeasureResult,
  isUnbudgeted: boolean,
): readonly Notice[] {
  const notices: (Notice | null)[] = [
    a.sha256 === b.sha256
      ? { code: 'compare.same', message: 'Both are the same capture: their SHA-256 are equal.' }
      : null,
    a.nominal?.voltageV !== b.nominal?.voltageV || a.nominal?.frequencyHz !== b.nominal?.frequencyHz
      ? { code: 'compare.nominal', message: 'They are not of the same nominal voltage and frequency.' }
      : null,
    loadNotice(a.load, b.load),
    ordersOf(a) !== ordersOf(b)
      ? {
          code: 'compare.orders',
          message: `Their THD counts harmonics to different orders, ${ordersOf(a)} and ${ordersOf(b)}: compare it with care, or set --orders.`,
        }
      : null,
    rateNotice(a.capture.sampleRateHz, b.capture.sampleRateHz),
    isUnbudgeted
      ? {
          code: 'compare.budgets',
          message:
            'One instrument was told, but sheets and results don’t carry what their uncertainties are made of: name the captures themselves. The differences are taken as of two instruments.',
        }
      : null,
  ];
  return notices.filter((notice) => notice !== null);
}

function loadNotice(a: string | undefined, b: string | undefined): Notice | null {
  const code = 'compare.load';
  if (a === undefined || b === undefined) {
    return { code, message: 'The load of one or both is not told: a difference may be the load’s.' };
  }
  return a === b ? null : { code, message: `They were taken at different loads, ${a} and ${b}.` };
}

function rateNotice(a: number, b: number): Notice | null {
  return Math.max(a, b) <= RATE_RATIO * Math.min(a, b)
    ? null
    : {
        code: 'compare.rate',
        message:
          'Their sample rates are more than a factor of two apart: noise, edges and THD plus noise are seen differently.',
      };
}

function ordersOf({ voltage, current }: MeasureResult): number | undefined {
  return (voltage ?? current)?.thdOrders;
}
