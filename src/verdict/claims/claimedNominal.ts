import type { ToldNominal } from '../nominal/mainsNominals.ts';
import type { Claim, ClaimedFigure } from './claim.ts';

/**
 * What the claims say the outlet is meant to give: the value before a tolerance, or alone. A range or a
 * bound names none. Of several, the first.
 *
 * @example claimedNominal([parseClaim('120 V ±5 %')]) // { voltageV: 120 }
 */
export function claimedNominal(claims: readonly Claim[]): ToldNominal {
  const voltageV = firstTarget(claims, 'rmsV');
  const frequencyHz = firstTarget(claims, 'frequencyHz');
  return {
    ...(voltageV === null ? {} : { voltageV }),
    ...(frequencyHz === null ? {} : { frequencyHz }),
  };
}

function firstTarget(claims: readonly Claim[], quantity: ClaimedFigure): number | null {
  for (const claim of claims) if (claim.quantity === quantity && claim.target !== null) return claim.target;
  return null;
}
