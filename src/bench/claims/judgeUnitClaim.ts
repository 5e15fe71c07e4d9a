import type { FigureClaim } from '../../verdict/claims/claim.ts';
import type { BenchClaim, BenchTransfer } from '../benchDocument.ts';
import { briefSeconds } from '../loads/shownLoad.ts';
import { judgeCapacity } from './judgeCapacity.ts';
import { judgeEfficiency } from './judgeEfficiency.ts';
import { judgePower } from './judgePower.ts';
import { judgeSurge } from './judgeSurge.ts';
import { isOfOutlet, type UnitClaim } from './unitClaim.ts';
import type { UnitEvidence } from './unitEvidence.ts';
import { worstCapture } from './worstCapture.ts';

/** Whether a claim holds over all captures of a unit: the worst case decides and is named. */
export function judgeUnitClaim(claim: UnitClaim, evidence: UnitEvidence): BenchClaim {
  if (isOfOutlet(claim)) {
    const lost = claim.quantity === 'transferS' ? lostTransfer(claim, evidence.transfers) : null;
    return lost ?? worstCapture(claim, evidence.judged);
  }
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

/** A transfer whose voltage stayed away for longer than claimed, to the record's end; null where there is none. */
function lostTransfer(
  { text, quantity, limit }: FigureClaim,
  transfers: readonly BenchTransfer[],
): BenchClaim | null {
  const longest = limit?.max;
  const lost = transfers.find(({ notBackS = 0 }) => longest !== undefined && notBackS > longest);
  if (lost === undefined) return null;
  const { file: worstFile, notBackS = 0 } = lost;
  return {
    ...{ text, quantity, value: notBackS, limit, outcome: 'fail', probability: 0 },
    reason: `output lost, and not back after ${briefSeconds(notBackS)}`,
    ...{ worstFile, worstLoadW: null },
  };
}
