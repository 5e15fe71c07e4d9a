import { wattsInWords } from '../../entry/benching.ts';
import { type Entry, knownOf } from '../desk/entry.ts';
import type { AskedUnit } from '../worker/requests.ts';

/** Captures by unit. */
export interface FoundUnits {
  /** Those with captures at two loads at least. */
  readonly units: readonly AskedUnit[];
  /** Names of captures that none of them has a place for. */
  readonly leftOut: readonly string[];
}

/** What a capture shows of its unit: one load, or a change. */
interface Placed {
  readonly id: number;
  readonly name: string;
  readonly label: string;
  readonly claims: readonly string[];
  readonly place: 'sweep' | 'step' | 'transfer' | 'none';
  /** Null: as it was measured. */
  readonly loadW: number | null;
}

/** What a unit is called that nothing was told of. */
const UNNAMED = 'The unit under test';

/**
 * Captures at several loads, by the label of their unit, with its load steps and transfers.
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
  const all = entries.flatMap((entry) => placed(entry) ?? []);
  const units = [...new Set(all.map(({ label }) => label))].flatMap((label): AskedUnit[] => {
    const own = all.filter((one) => one.label === label);
    const at = (place: Placed['place']): Placed[] => own.filter((one) => one.place === place);
    const sweep = at('sweep');
    if (sweep.length < 2) return [];
    const claiming = own.filter(({ claims }) => claims.length > 0);
    const claims = (claiming.find(({ id }) => id === looked) ?? claiming[0])?.claims ?? [];
    const rating = ratings.get(label);
    return [
      {
        ...{ label, claims: rating === undefined ? claims : [...claims, rating] },
        captures: sweep.map(({ id, loadW }) => ({ id, told: { loadW } })),
        steps: at('step').map(({ id }) => id),
        transfers: at('transfer').map(({ id }) => id),
      },
    ];
  });
  const isTaken = ({ label, place }: Placed): boolean =>
    place !== 'none' && units.some((unit) => unit.label === label);
  return { units, leftOut: all.filter((one) => !isTaken(one)).map(({ name }) => name) };
}

/** Null for a capture without a voltage. */
function placed(entry: Entry): Placed | null {
  const channel = entry.state.at === 'failed' ? undefined : knownOf(entry)?.assays[0];
  if (channel?.result.voltage === undefined) return null;
  const { result, wave } = channel;
  const { id, name } = entry;
  const { label, load = '', claims } = wave.options;
  const loadW = wattsInWords(load);
  const of = (place: Placed['place']): Placed => ({
    ...{ id, name, label: label ?? UNNAMED, claims, place, loadW },
  });
  const isNamed = label !== undefined;
  if (isNamed && result.events.some(({ kind }) => kind === 'transfer')) return of('transfer');
  if (loadW !== null) return of('sweep');
  // A load is told on purpose; a change joins a unit only where that is.
  if (result.steps.length > 0 || result.events.length > 0)
    return of(isNamed && result.steps.length > 0 ? 'step' : 'none');
  return of(result.power === undefined ? 'none' : 'sweep');
}
