import { type Budget, budgeted } from '../../figures/uncertainty/budget.ts';

/** Influences that all captures of an evening share: they move the whole sweep and not its shape. */
const COMMON: readonly string[] = [
  'vertical gain',
  'probe ratio',
  'accuracy of the meter',
  'vertical offset',
  'bandwidth',
];

/**
 * The part of a voltage's uncertainty that differs from capture to capture: noise, resolution, edges, method.
 *
 * @returns half-width that covers 95.45 %, in the figure's unit.
 * @remarks It presumes one scope, one probe and one vertical setting for all captures: a scope's gain differs
 * a little from setting to setting, which this leaves out.
 */
export function rmsScatter({ components }: Budget): number {
  return budgeted(
    0,
    components.filter(({ source }) => !COMMON.includes(source)),
  ).uncertainty;
}
