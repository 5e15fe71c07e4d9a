import { decide } from '../../verdict/rule/decide.ts';
import type { BenchClaim } from '../benchDocument.ts';
import { briefSeconds, isAbove } from '../loads/shownLoad.ts';
import { doubtfulLoss, type KnownLoad, knownLoads, lossWords, REACHED_SHARE, worstOf } from './judgePower.ts';
import type { RatingClaim } from './unitClaim.ts';
import type { UnitEvidence } from './unitEvidence.ts';

/**
 * Whether the unit carries a surge for as long as is claimed: not where the output is lost before, at that load or a
 * lower one, nor where its voltage leaves its range. Where no time was claimed a loss can't be judged: how long the
 * load was held is said.
 *
 * @returns a pass only where the whole time was seen.
 */
export function judgeSurge(
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
