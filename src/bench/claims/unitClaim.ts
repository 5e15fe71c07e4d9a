import type { Claim } from '../../verdict/claims/claim.ts';
import type { Limit } from '../../verdict/measureDocument.ts';

/** What a maker says of a unit: of its outlet, as one capture can show it, or a rating that takes several. */
export type UnitClaim = Claim | RatingClaim | EfficiencyClaim;

export interface RatingClaim {
  /** As given. */
  readonly text: string;
  /** Continuous power, power for a short while, energy of the battery. */
  readonly quantity: 'powerW' | 'surgeW' | 'capacityWh';
  /** In the quantity's unit, > 0. */
  readonly rating: number;
  /** For how long a surge is meant to be carried, s, > 0; absent: not told. */
  readonly forS?: number;
}

/** What of the battery's energy reaches the outlet. */
export interface EfficiencyClaim {
  /** As given. */
  readonly text: string;
  readonly quantity: 'conversionEfficiencyPercent';
  /** In %. */
  readonly limit: Limit;
}

/** Whether a claim is a rating of the unit. */
export function isRating(claim: UnitClaim): claim is RatingClaim {
  return 'rating' in claim;
}

/** Whether single captures of the outlet can judge a claim. */
export function isOfOutlet(claim: UnitClaim): claim is Claim {
  return !isRating(claim) && claim.quantity !== 'conversionEfficiencyPercent';
}
