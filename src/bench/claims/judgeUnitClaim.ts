import type { FigureClaim } from '../../judge/claims/claim.ts';
import { DECENT_USABLE_SHARE_PERCENT, REACHED_SHARE } from '../../judge/claims/ratings.ts';
import { decide } from '../../judge/decide.ts';
import type { BenchClaim, BenchTransfer } from '../benchDocument.ts';
import { briefSeconds, isAbove } from '../shownLoad.ts';
import { doubtfulLoss, judgePower, type KnownLoad, knownLoads, lossWords, worstOf } from './judgePower.ts';
import {
  type EfficiencyClaim,
  isOfOutlet,
  type RatingClaim,
  type UnitClaim,
  type UnitEvidence,
  worstCapture,
} from './unitClaim.ts';

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

/**
 * Whether the capacity is there: the worst run's energy at the DC side, against the share of the rating that is
 * taken as decent. The energy at the outlet can't tell, for it has paid the inverter's losses.
 */
function judgeCapacity(
  { text, quantity, rating }: RatingClaim,
  { energy, rule }: Pick<UnitEvidence, 'energy' | 'rule'>,
): BenchClaim {
  const [worst] = energy
    .flatMap(({ dcWh }) => (dcWh.value === null ? [] : [dcWh]))
    .sort((a, b) => a.value - b.value);
  const limit = { min: (DECENT_USABLE_SHARE_PERCENT / 100) * rating };
  const known = { text, quantity, limit, worstFile: null, worstLoadW: null };
  if (worst === undefined) {
    const reason = 'no energy was measured at the DC side';
    return { ...known, value: null, outcome: 'not judged', probability: null, reason };
  }
  const { outcome, probability } = decide(worst, limit, rule);
  const share = ((100 * worst.value) / rating).toFixed(0);
  return {
    ...known,
    ...{ value: worst.value, outcome, probability },
    reason: `${share} % of the rating can be used; ${DECENT_USABLE_SHARE_PERCENT} % and up is taken as decent, common practice`,
  };
}

/** Whether a usable share (DC energy over rating, not the outlet share) is what one may expect. */
export function isDecentUsableShare(usableSharePercent: number): boolean {
  return usableSharePercent >= DECENT_USABLE_SHARE_PERCENT;
}

/**
 * Whether what is claimed of the battery's energy reaches the outlet: the discharge that does worst decides. The share
 * of the rating that reaches the outlet is another ratio and can't tell.
 */
function judgeEfficiency(
  { text, quantity, limit }: EfficiencyClaim,
  { energy, rule }: Pick<UnitEvidence, 'energy' | 'rule'>,
): BenchClaim {
  const known = { text, quantity, limit, worstFile: null, worstLoadW: null };
  const [worst] = energy
    .map(({ conversionEfficiencyPercent }) => conversionEfficiencyPercent)
    .flatMap((figure) => (figure.value === null ? [] : [figure]))
    .map((figure) => ({ figure, decision: decide(figure, limit, rule) }))
    .sort((a, b) => (a.decision.probability ?? 1) - (b.decision.probability ?? 1));
  if (worst === undefined) {
    const reason = 'no discharge was measured at both the DC side and the AC outlet';
    return { ...known, value: null, outcome: 'not judged', probability: null, reason };
  }
  const { outcome, probability } = worst.decision;
  return { ...known, value: worst.figure.value, outcome, probability };
}

/**
 * Whether the unit carries a surge for as long as is claimed: not where the output is lost before, at that load or a
 * lower one, nor where its voltage leaves its range. Where no time was claimed a loss can't be judged: how long the
 * load was held is said.
 *
 * @returns a pass only where the whole time was seen.
 */
function judgeSurge(
  { text, quantity, rating, forS }: RatingClaim,
  { loads, range, rule }: Pick<UnitEvidence, 'loads' | 'range' | 'rule'>,
): BenchClaim {
  const known = { text, quantity, limit: { min: rating } };
  const of = (load: KnownLoad | undefined) => ({
    worstFile: load?.file ?? null,
    worstLoadW: load?.watts ?? null,
  });
  const unjudged = (reason: string, load?: KnownLoad): BenchClaim => ({
    ...known,
    ...{ value: load?.watts ?? null, outcome: 'not judged', probability: null, reason, ...of(load) },
  });
  const loaded = knownLoads(loads);
  const within = loaded.filter(({ loadW }) => !isAbove(loadW, rating));
  const isReached = ({ watts }: KnownLoad): boolean => watts >= REACHED_SHARE * rating;
  // Of what was lost, that which was held shortest; the surge's own load before lower ones.
  const [lost] = within
    .filter(({ loss }) => loss !== null && loss.kind !== 'transfer')
    .sort(
      (a, b) => Number(isReached(b)) - Number(isReached(a)) || (a.heldS.value ?? 0) - (b.heldS.value ?? 0),
    );
  if (lost !== undefined) {
    if (forS === undefined)
      return unjudged(`held ${heldWords(lost)}; for how long it is meant is not claimed`, lost);
    const held = lost.heldS;
    const { outcome, probability } = decide(held, { min: forS }, rule);
    if (!outcome.endsWith('pass')) {
      // Held for longer than the record shows: what is seen is no upper bound.
      if (lost.heldAtLeast)
        return unjudged(`held ${heldWords(lost)}, of ${briefSeconds(forS)} claimed`, lost);
      return { ...known, value: lost.watts, outcome, probability, reason: lossWords(lost), ...of(lost) };
    }
    if (isReached(lost))
      return { ...known, value: lost.watts, outcome, probability, reason: lossWords(lost), ...of(lost) };
  }
  const doubt = doubtfulLoss([
    ...within.filter(({ loss }) => loss?.kind === 'transfer'),
    ...loads.filter(({ loadW }) => loadW.value === null),
  ]);
  if (doubt !== null) return unjudged(doubt);
  const reached = within.filter((load) => isReached(load) && load.loss === null);
  const above = loaded.filter(({ loadW, loss }) => isAbove(loadW, rating) && loss === null).slice(0, 1);
  const shown = reached.length > 0 ? reached : above;
  if (shown.length === 0 && lost !== undefined && isReached(lost))
    return unjudged(`held ${heldWords(lost)}`, lost);
  if (shown.length === 0) return unjudged(`no capture or step reaches ${rating} W`);
  if (range === null)
    return unjudged('no range of the voltage is known to hold it against: claim one or tell the nominal');
  const decided = shown.map((load) => ({ load, decision: decide(load.rmsV, range.limit, rule) }));
  const { load, decision } = worstOf(decided);
  if (reached.length === 0 && !decision.outcome.endsWith('pass'))
    return unjudged(`no capture between ${Math.round(REACHED_SHARE * rating)} and ${rating} W`);
  const seenS = Math.max(...decided.map((one) => one.load.heldS.value ?? 0));
  const isWhole = forS !== undefined && seenS >= forS;
  const seen = `${briefSeconds(seenS)}${forS === undefined || isWhole ? '' : ` of ${briefSeconds(forS)}`} seen`;
  const volts = load.rmsV.value === null ? load.rmsV.reason : `${load.rmsV.value.toFixed(1)} V`;
  return {
    ...known,
    value: load.watts,
    outcome: decision.outcome === 'pass' && !isWhole ? 'conditional pass' : decision.outcome,
    probability: decision.probability,
    reason: `${seen}; ${volts} at ${Math.round(load.watts)} W`,
    ...of(load),
  };
}

/** "0.14 s at 1500 W", "at least 0.24 s at 1500 W". */
function heldWords({ heldS, heldAtLeast, watts }: KnownLoad): string {
  const seconds = heldS.value === null ? 'for some time' : briefSeconds(heldS.value);
  return `${heldAtLeast ? 'at least ' : ''}${seconds} at ${Math.round(watts)} W`;
}
