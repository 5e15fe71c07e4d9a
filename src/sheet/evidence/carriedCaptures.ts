import type { CarriedCapture, CarriedUnit, Evidence, OneCapture } from './evidence.ts';

/** Every capture that stands behind a sheet, with what it takes to measure it again. */
export function carriedCaptures(evidence: Evidence): readonly CarriedCapture[] {
  switch (evidence.picture) {
    case 'overlay':
      return evidence.sides.map(ofOne);
    case 'sweep':
    case 'comparison':
      return capturesOfUnits(evidence.told);
    default:
      return [ofOne(evidence)];
  }
}

/** Every capture that stands behind the results of units. */
export function capturesOfUnits(told: readonly CarriedUnit[]): readonly CarriedCapture[] {
  return told.flatMap(({ sweep, steps, transfers }) => [...sweep, ...steps, ...transfers]);
}

function ofOne({ result: { file, sha256 }, options }: OneCapture): CarriedCapture {
  return { file, sha256, options };
}
