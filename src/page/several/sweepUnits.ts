import { type Entry, knownOf } from '../desk/entry.ts';
import type { AskedUnit, MeasuredChannel } from '../worker/requests.ts';
import { loadWatts } from './loadWatts.ts';

/** Captures by unit, as far as they stand at different loads. */
export interface FoundUnits {
  /** Those with two captures at least. */
  readonly units: readonly AskedUnit[];
  /** Names of measured captures that no unit has a place for: their load is not told in watts, nor measured. */
  readonly leftOut: readonly string[];
}

/** What a unit is called that nothing was told of. */
const UNNAMED = 'The unit under test';

/**
 * Captures at several loads, by the label of their unit.
 *
 * @param looked - the capture that is looked at. Its claims are those of its unit; where it has none, or is of another
 * unit, those of the unit's first capture that has some.
 * @param ratings - what units are rated at, as claims such as `power 600 W`, by label.
 */
export function sweepUnits(
  entries: readonly Entry[],
  looked: number | null,
  ratings: ReadonlyMap<string, string>,
): FoundUnits {
  const leftOut: string[] = [];
  const byLabel = new Map<
    string,
    { id: number; told: { loadW: number | null }; claims: readonly string[] }[]
  >();
  for (const entry of entries) {
    const channel = entry.state.at === 'failed' ? undefined : knownOf(entry)?.assays[0];
    if (channel?.result.voltage === undefined) continue;
    const loadW = loadOf(channel);
    if (loadW === undefined) {
      leftOut.push(entry.name);
      continue;
    }
    const { label = UNNAMED, claims } = channel.wave.options;
    const captures = byLabel.get(label) ?? [];
    byLabel.set(label, [...captures, { id: entry.id, told: { loadW }, claims }]);
  }
  const units = [...byLabel].map(([label, captures]) => {
    const rating = ratings.get(label);
    const claiming = captures.filter(({ claims }) => claims.length > 0);
    const of = claiming.find(({ id }) => id === looked) ?? claiming[0];
    return {
      label,
      claims: [...(of?.claims ?? []), ...(rating === undefined ? [] : [rating])],
      captures: captures.map(({ id, told }) => ({ id, told })),
    };
  });
  return { units: units.filter(({ captures }) => captures.length > 1), leftOut };
}

/** In watts; null: as measured; undefined: neither told nor measured, or it changes within the record. */
function loadOf({ result, wave }: MeasuredChannel): number | null | undefined {
  const told = loadWatts(wave.options.load ?? '');
  if (told !== null) return told;
  return result.power === undefined || result.steps.length > 0 ? undefined : null;
}
