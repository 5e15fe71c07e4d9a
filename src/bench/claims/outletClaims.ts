import type { Claim } from '../../verdict/claims/claim.ts';
import { claimedNominal } from '../../verdict/claims/claimedNominal.ts';
import type { ToldNominal } from '../../verdict/nominal/mainsNominals.ts';
import { isOfOutlet, type UnitClaim } from './unitClaim.ts';

/** The claims of a unit that single captures judge, by the captures that can. */
export interface OutletClaims {
  readonly sweep: readonly Claim[];
  readonly transfers: readonly Claim[];
  /** What they say the outlet is meant to give. */
  readonly nominal: ToldNominal;
}

/** Which of a unit's claims go to which of its captures; ratings go to none. */
export function outletClaims(claims: readonly UnitClaim[]): OutletClaims {
  const outlet = claims.filter(isOfOutlet);
  return {
    sweep: outlet.filter(({ quantity }) => quantity !== 'transferS'),
    transfers: outlet.filter(({ quantity }) => quantity === 'transferS'),
    nominal: claimedNominal(outlet),
  };
}
