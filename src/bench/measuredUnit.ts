import type { Assay } from '../assay/assay.ts';
import { loadInFileName } from '../assay/loadSeen.ts';
import type { AssayResult } from '../assay/measureDocument.ts';
import { REACHED_SHARE } from '../judge/claims/ratings.ts';
import type { DecisionRule } from '../judge/decide.ts';
import { isWholeNominal, type Nominal, type ToldNominal } from '../judge/nominal/mainsNominals.ts';
import type { TransferDirection } from './benchDocument.ts';
import { isRating, type UnitClaim } from './claims/unitClaim.ts';
import type { ToldEnergy } from './energyRun.ts';
import type { ToldLoad } from './sweep/benchPoint.ts';

/** All that was told and measured of one unit. */
export interface MeasuredUnit {
  readonly name: string;
  readonly label: string;
  readonly claims: readonly UnitClaim[];
  readonly rule: DecisionRule;
  readonly sweep: readonly MeasuredCapture[];
  readonly steps: readonly MeasuredStep[];
  readonly transfers: readonly MeasuredTransfer[];
  readonly energy: readonly ToldEnergy[];
}

export interface MeasuredCapture extends Pick<Assay, 'result' | 'budgets'> {
  readonly told: ToldLoad;
  /** Where its own sheet was written. */
  readonly sheet?: string;
}

/** What a person tells of a capture of a transfer. */
export interface ToldTransfer {
  readonly note?: string;
  /** Of the first transfer in it; absent: not told. */
  readonly direction?: TransferDirection;
}

export interface MeasuredTransfer extends ToldTransfer {
  readonly result: AssayResult;
}

/** What a person tells of a capture that holds a load step. */
export interface ToldStep {
  /** Null: not told. */
  readonly fromW: number | null;
  readonly toW: number | null;
  readonly resistive: boolean | null;
  readonly note?: string;
}

/**
 * Whether a step was told to be that of a resistor from nothing to all that the unit is rated at, or back.
 *
 * @param claims - among which the rated power must be; none: no.
 */
export function isResistiveFullStep(
  { fromW, toW, resistive }: ToldStep,
  claims: readonly UnitClaim[],
): boolean {
  const rated = claims.find((claim) => isRating(claim) && claim.quantity === 'powerW');
  if (resistive !== true || fromW === null || toW === null || rated === undefined || !isRating(rated))
    return false;
  const [less, more] = [Math.min(fromW, toW), Math.max(fromW, toW)];
  return less === 0 && more >= REACHED_SHARE * rated.rating && more <= rated.rating / REACHED_SHARE;
}

export interface MeasuredStep {
  readonly result: AssayResult;
  readonly told: ToldStep;
}

/** A capture of a unit, as far as it is known before it is measured. */
interface UnmeasuredCapture {
  readonly file: string;
  /** Null: not told. */
  readonly loadW: number | null;
}

/**
 * What a unit's outlet is meant to give where nobody told it whole: what its capture at the lightest load is taken for, or
 * the next where that one is taken for nothing.
 *
 * @param captures - of one unit, those of its sweep before others; without those whose own nominal was told whole.
 * @param measure - the result of one of them measured alone; null where it can't be.
 * @returns null where no capture is taken for anything.
 */
export async function unitNominal<T extends UnmeasuredCapture>(
  captures: readonly T[],
  measure: (capture: T) => Promise<Pick<AssayResult, 'nominal' | 'loadSeen'> | null>,
): Promise<Nominal | null> {
  const loaded = captures.map((capture) => ({ capture, loadW: knownLoadW(capture) }));
  // Loads that only a current tells take a measurement each to be put in order.
  if (loaded.every(({ loadW }) => loadW === null)) {
    const results = [];
    for (const capture of captures) results.push(await measure(capture));
    return (
      byLoad(results.map((result) => ({ result, loadW: result?.loadSeen?.watts ?? null }))).flatMap(
        ({ result }) => result?.nominal ?? [],
      )[0] ?? null
    );
  }
  for (const { capture } of byLoad(loaded)) {
    const nominal = (await measure(capture))?.nominal;
    if (nominal) return nominal;
  }
  return null;
}

/** What one of the unit's captures is held against: what was told, filled by the unit's nominal. */
export function nominalOfUnit(told: ToldNominal, ofUnit: Nominal | null): ToldNominal {
  if (ofUnit === null || isWholeNominal(told)) return told;
  const { voltageV, frequencyHz } = ofUnit;
  return {
    ...{ voltageV, frequencyHz },
    ...told,
    ...(told.voltageV === undefined && ofUnit.inferred ? { ofUnit: true } : {}),
  };
}

function knownLoadW({ loadW, file }: UnmeasuredCapture): number | null {
  return loadW ?? loadInFileName(file.split(/[/\\]/).at(-1)!)?.watts ?? null;
}

/** By rising load, those of unknown load after them. */
function byLoad<T extends { readonly loadW: number | null }>(captures: readonly T[]): readonly T[] {
  const size = ({ loadW }: T): number => loadW ?? Number.POSITIVE_INFINITY;
  // Two unknown loads are as they stand: their difference would be no number.
  return [...captures].sort((a, b) => (size(a) === size(b) ? 0 : size(a) - size(b)));
}
