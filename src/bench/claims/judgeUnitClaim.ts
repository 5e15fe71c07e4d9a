import type { BenchClaim } from '../benchDocument.ts';
import { judgeCapacity } from './judgeCapacity.ts';
import { judgeEfficiency } from './judgeEfficiency.ts';
import { judgePower } from './judgePower.ts';
import { judgeSurge } from './judgeSurge.ts';
import { isOfOutlet, type UnitClaim } from './unitClaim.ts';
import type { UnitEvidence } from './unitEvidence.ts';
import { worstCapture } from './worstCapture.ts';

/** Whether a claim holds over all captures of a unit: the worst case decides and is named. */
export function judgeUnitClaim(claim: UnitClaim, evidence: UnitEvidence): BenchClaim {
  if (isOfOutlet(claim)) return worstCapture(claim, evidence.judged);
  switch (claim.quantity) {
    case 'powerW':
      return judgePower(claim, evidence);
    case 'surgeW':
      return judgeSurge(claim, evidence);
    case 'capacityWh':
      return judgeCapacity(claim, evidence);
    case 'conversionEfficiencyPercent':
      return judgeEfficiency(claim, evidence);
  }
}
