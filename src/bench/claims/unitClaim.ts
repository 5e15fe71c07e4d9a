import type { Claim } from '../../verdict/claims/claim.ts';

/** What a maker says of a unit: of its outlet, as one capture can show it, or a rating that takes several. */
export type UnitClaim = Claim | RatingClaim;

export interface RatingClaim {
  /** As given. */
  readonly text: string;
  /** Continuous power, power for a short while, energy of the battery. */
  readonly quantity: 'powerW' | 'surgeW' | 'capacityWh';
  /** In the quantity's unit, > 0. */
  readonly rating: number;
}

/** Whether a claim is a rating of the unit. */
export function isRating(claim: UnitClaim): claim is RatingClaim {
  return 'rating' in claim;
}
