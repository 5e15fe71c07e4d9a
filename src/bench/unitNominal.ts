import { loadInFileName } from '../verdict/load/loadInFileName.ts';
import type { MeasureResult, Nominal } from '../verdict/measureDocument.ts';
import { isWholeNominal, type ToldNominal } from '../verdict/nominal/mainsNominals.ts';

/** A capture of a unit, as far as it is known before it is measured. */
export interface UnmeasuredCapture {
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
  measure: (capture: T) => Promise<Pick<MeasureResult, 'nominal' | 'loadSeen'> | null>,
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
