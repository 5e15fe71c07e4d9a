import { isSmooth, wattsInWords } from '../../entry/benching.ts';
import type { MeasureResult } from '../../entry/measuring.ts';
import { type Entry, knownOf } from '../desk/sitting.ts';
import type { AskedUnit } from '../worker/requests.ts';

/** Captures by unit. */
interface FoundUnits {
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
  /** Nominal and kind of wave. */
  readonly outlet: Outlet;
  readonly claims: readonly string[];
  readonly place: 'sweep' | 'step' | 'transfer' | 'none';
  /** Null: as it was measured. */
  readonly loadW: number | null;
}

/** What a unit is called that nothing was told of. */
const UNNAMED = 'The unit under test';

/** What an outlet gives: one can't be of two nominals, nor give a sine at one load and plateaus at another. */
interface Outlet {
  /** Empty where none was found. */
  readonly nominal: string;
  readonly kind: string;
}

function outletOf({ nominal, waveform: { kind } }: MeasureResult): Outlet {
  return {
    nominal: nominal === null ? '' : `${nominal.voltageV} V ${nominal.frequencyHz} Hz`,
    kind: isSmooth(kind) ? 'sine' : kind,
  };
}

/** Captures without a unit's name are one unit as far as their outlets are alike; else each outlet is one of its own. */
function named(all: readonly Placed[]): readonly Placed[] {
  const unnamed = all.filter(({ label }) => label === UNNAMED);
  const nominals = (kind: string): readonly string[] => [
    ...new Set(
      unnamed
        .filter(({ outlet }) => outlet.kind === kind && outlet.nominal !== '')
        .map(({ outlet }) => outlet.nominal),
    ),
  ];
  const wordsOf = ({ nominal, kind }: Outlet): string => {
    const [only, ...others] = nominals(kind);
    // A voltage too low for its nominal is still that outlet's, where there is one alone.
    const volts = nominal !== '' || others.length > 0 ? nominal : (only ?? '');
    return [volts, kind].filter((part) => part !== '').join(', ');
  };
  if (new Set(unnamed.map(({ outlet }) => wordsOf(outlet))).size < 2) return all;
  return all.map((one) =>
    one.label === UNNAMED ? { ...one, label: `A unit without a name (${wordsOf(one.outlet)})` } : one,
  );
}

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
  const all = named(entries.flatMap((entry) => placed(entry) ?? []));
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
    ...{ id, name, label: label ?? UNNAMED, outlet: outletOf(result), claims, place, loadW },
  });
  const isNamed = label !== undefined;
  if (isNamed && result.events.some(({ kind }) => kind === 'transfer')) return of('transfer');
  if (loadW !== null) return of('sweep');
  // A load is told on purpose; a change joins a unit only where that is.
  if (result.steps.length > 0 || result.events.length > 0)
    return of(isNamed && result.steps.length > 0 ? 'step' : 'none');
  return of(result.power === undefined ? 'none' : 'sweep');
}
