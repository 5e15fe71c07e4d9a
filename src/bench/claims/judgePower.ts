import { REACHED_SHARE } from '../../judge/claims/ratings.ts';
import { type Decision, decide } from '../../judge/decide.ts';
import type { BenchClaim } from '../benchDocument.ts';
import { briefSeconds, isAbove, type ShownLoad } from '../shownLoad.ts';
import { type RatingClaim, type UnitEvidence, worstOutcome } from './unitClaim.ts';

/**
 * Whether the unit delivers the power it is rated at: not where the voltage is lost or browns out at a load that
 * isn't surely above it, nor where it leaves its range at the rated load. What lies above is overload and held
 * against no claim; the lowest such load may speak for it, where nothing else reaches the rating.
 *
 * @returns at best a conditional pass: a capture lasts a moment, and the reason says which.
 */
export function judgePower(
  { text, quantity, rating }: RatingClaim,
  { loads, range, rule }: Pick<UnitEvidence, 'loads' | 'range' | 'rule'>,
): BenchClaim {
  const known = { text, quantity, limit: { min: rating } };
  const loaded = knownLoads(loads);
  const unjudged = (reason: string): BenchClaim => ({
    ...known,
    ...{ value: loaded.at(-1)?.watts ?? null, outcome: 'not judged', probability: null, reason },
    ...{ worstFile: null, worstLoadW: null },
  });
  const within = loaded.filter(({ loadW }) => !isAbove(loadW, rating));
  const lost = within.find(({ loss }) => loss !== null && loss.kind !== 'transfer');
  if (lost !== undefined) {
    const { file, watts } = lost;
    return {
      ...known,
      ...{ value: watts, outcome: 'fail', probability: 0, reason: lossWords(lost) },
      ...{ worstFile: file, worstLoadW: watts },
    };
  }
  const doubt = doubtfulLoss([...within, ...loads.filter(({ loadW }) => loadW.value === null)]);
  if (doubt !== null) return unjudged(doubt);
  const reached = within.filter(({ watts }) => watts >= REACHED_SHARE * rating);
  const above = loaded.filter(({ loadW, loss }) => isAbove(loadW, rating) && loss === null).slice(0, 1);
  if (reached.length + above.length === 0) {
    const highest = loaded.findLast(({ loss }) => loss === null);
    return unjudged(
      highest === undefined
        ? 'no capture of a known load'
        : `no capture reaches ${rating} W: the highest load is ${Math.round(highest.watts)} W`,
    );
  }
  if (range === null)
    return unjudged('no range of the voltage is known to hold it against: claim one or tell the nominal');
  const decided = (reached.length > 0 ? reached : above).map((load) => ({
    load,
    decision: decide(load.rmsV, range.limit, rule),
  }));
  const worst = worstOf(decided);
  const { load, decision } = worst;
  // An overload that fails says nothing of the rating.
  if (reached.length === 0 && !decision.outcome.endsWith('pass'))
    return unjudged(`no capture between ${Math.round(REACHED_SHARE * rating)} and ${rating} W`);
  const seenS = Math.max(...decided.map((one) => one.load.heldS.value ?? 0));
  const volts = load.rmsV.value === null ? load.rmsV.reason : `${load.rmsV.value.toFixed(1)} V`;
  return {
    ...known,
    value: load.watts,
    outcome: decision.outcome === 'pass' ? 'conditional pass' : decision.outcome,
    probability: decision.probability,
    reason: `${briefSeconds(seenS)} seen; ${volts} at ${Math.round(load.watts)} W`,
    ...{ worstFile: load.file, worstLoadW: load.watts },
  };
}

/** A load whose watts are known. */
export type KnownLoad = ShownLoad & { readonly watts: number };

/** Loads that are known, by rising load; of several alike the one that was lost first. */
export function knownLoads(loads: readonly ShownLoad[]): readonly KnownLoad[] {
  const held = ({ heldS }: ShownLoad): number => heldS.value ?? 0;
  return loads
    .flatMap((load) => (load.loadW.value === null ? [] : [{ ...load, watts: load.loadW.value }]))
    .sort((a, b) => a.watts - b.watts || held(a) - held(b));
}

/** "output lost 0.14 s after 1500 W came on"; "output lost after at least 0.24 s at 1500 W". */
export function lossWords({ loss, heldS, heldAtLeast, watts }: KnownLoad): string {
  const load = `${Math.round(watts)} W`;
  if (loss === null || heldS.value === null) return `${loss?.words ?? 'held'} at ${load}`;
  const seconds = briefSeconds(heldS.value);
  return heldAtLeast
    ? `${loss.words} after at least ${seconds} at ${load}`
    : `${loss.words} ${seconds} after ${load} came on`;
}

/** Why a loss that was seen can't be laid to a load; null where there is none such. */
export function doubtfulLoss(loads: readonly ShownLoad[]): string | null {
  const lost = loads.find(({ loss }) => loss !== null);
  if (lost === undefined || lost.loss === null) return null;
  const { file, loss, loadW } = lost;
  return loadW.value === null
    ? `${loss.words} in ${file}, at a load that is not known`
    : `${loss.words} in ${file}: a fault, or a transfer to name under "transfers"`;
}

/** The one whose outcome is worst; of several alike the least probable. */
export function worstOf<T extends { readonly decision: Decision }>(decided: readonly T[]): T {
  const outcome = worstOutcome(decided.map(({ decision }) => decision.outcome));
  const [worst] = decided
    .filter(({ decision }) => decision.outcome === outcome)
    .sort((a, b) => (a.decision.probability ?? 1) - (b.decision.probability ?? 1));
  if (worst === undefined) throw new RangeError('nothing was decided');
  return worst;
}
