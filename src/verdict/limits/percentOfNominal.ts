import { hypot } from '../../base/elementary/hypot.ts';
import type { Figure } from '../../base/figure.ts';

/**
 * A percentage of the fundamental told in percent of the nominal voltage: p · V_1 / V_nominal.
 *
 * @param percent - of the fundamental.
 * @param fundamentalV - RMS.
 * @returns with both uncertainties, taken as independent: U² = (U_p · V_1)² + (p · U_V1)², over V_nominal.
 */
export function percentOfNominal(percent: Figure, fundamentalV: Figure, nominalV: number): Figure {
  if (percent.value === null) return percent;
  if (fundamentalV.value === null) return fundamentalV;
  return {
    value: (percent.value * fundamentalV.value) / nominalV,
    uncertainty:
      hypot(percent.uncertainty * fundamentalV.value, percent.value * fundamentalV.uncertainty) / nominalV,
  };
}
