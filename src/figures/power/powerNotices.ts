import type { Notice } from '../../base/notice.ts';
import type { BudgetedFigure } from '../uncertainty/budget.ts';
import { contribution } from '../uncertainty/component.ts';

/** What to doubt about a power, and what to do about it. */
export function powerNotices(activeW: BudgetedFigure, skewDoubtS: number): Notice[] {
  const notices: Notice[] = [];
  const size = Math.abs(activeW.value);
  if (activeW.value < -activeW.uncertainty) {
    notices.push({
      code: 'power.negative',
      message: `Power comes out negative, ${Number(activeW.value.toPrecision(3))} W: the voltage probe or the clamp is the wrong way round. Turn the clamp round, or turn its channel upside down (--invert NAME).`,
    });
  }
  const skew = activeW.budget.components.find(({ unit }) => unit === 's');
  const skewW = skew === undefined ? 0 : Math.sqrt(3) * contribution(skew);
  if (skewW > 0.01 * size && skewW > 0.5 * activeW.uncertainty) {
    notices.push({
      code: 'power.skew',
      message: `Clamp and probe may be ${Number((skewDoubtS * 1e6).toPrecision(2))} µs apart in time, which is ${Number(skewW.toPrecision(2))} W on this load. Measure a heater on the same probe and clamp first: the displacement that it shows, over 360° and the frequency, is the delay to give with --skew.`,
    });
  }
  return notices;
}
