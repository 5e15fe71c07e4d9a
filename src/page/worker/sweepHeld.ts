import {
  type BenchDocument,
  benchUnit,
  compareUnits,
  isWholeNominal,
  type MeasuredUnit,
  nominalOfUnit,
  outletClaims,
  parseUnitClaim,
  unitNominal,
} from '../../entry/benching.ts';
import { type CarriedUnit, carryOptions, fileName, publishedOptions } from '../../entry/evidence.ts';
import { fields, type OptionKey, planKeys } from '../../entry/grammar.ts';
import {
  type Assay,
  type Claim,
  completeOptions,
  fieldOf,
  type ToldOptions,
  worded,
} from '../../entry/measuring.ts';
import { version } from '../shipped.ts';
import { type HeldFile, type HeldFiles, heldFile, type Task } from './heldCaptures.ts';
import { assayHeld } from './measureHeld.ts';
import type { AskedUnit, Requests, Sweeps } from './requests.ts';

/**
 * Units over their captures at several loads, of load steps and of transfers. Each capture is measured as one of its
 * unit: held against the unit's claims, whatever it was held against alone.
 *
 * @throws MeasureError as `assayHeld` does, or `file.closed`; `Cancelled`.
 */
export async function sweepHeld(
  files: HeldFiles,
  { units: asked }: Requests['sweep']['given'],
  task: Task,
): Promise<Sweeps> {
  const runs = [];
  for (const unit of asked) runs.push(await measureUnit(files, unit, task));
  const found = runs.map(({ measured }) => benchUnit(measured));
  const units = found.map((unit) => worded(unit));
  const told = runs.map((run) => run.told);
  const common = { schema: 'sineassay/sheet@1', program: version } as const;
  const bench: BenchDocument = {
    ...{ schema: 'sineassay/bench@1', units },
    ...{ comparison: worded(compareUnits(units)), failures: [] },
  };
  return {
    sweeps: units.map((result, i) => ({
      evidence: { ...common, picture: 'sweep', told: [told[i]!], result },
      shown: worded(found[i]!, fieldOf),
    })),
    comparison: units.length < 2 ? null : { ...common, picture: 'comparison', told, result: bench },
  };
}

async function measureUnit(
  files: HeldFiles,
  { label, claims: worded, captures, steps, transfers }: AskedUnit,
  task: Task,
): Promise<{ readonly measured: MeasuredUnit; readonly told: CarriedUnit }> {
  const claims = worded.map(parseUnitClaim);
  const asked = outletClaims(claims);
  const everyone = [
    ...captures.map(({ id, told }) => ({ id, loadW: told.loadW })),
    ...[...steps, ...transfers].map((id) => ({ id, loadW: null })),
  ].map(({ id, loadW }) => ({ held: heldFile(files, id), loadW, file: heldFile(files, id).name }));
  const toldAlone = ({ held }: (typeof everyone)[number]) => ({
    ...asked.nominal,
    ...held.measured?.options.nominal,
  });
  const nominal = await unitNominal(
    everyone.filter((one) => !isWholeNominal(toldAlone(one))),
    async (one) => {
      const { held } = one;
      const ofUnit = { label, nominal: toldAlone(one), claims: [], load: null };
      const options = outletOptions(held.measured?.options ?? {}, ofUnit);
      return (await outletAssay(held, files, options, task)).result;
    },
  );
  /** Each with what its sheet carries of it. */
  const measureAll = async <T>(
    ids: readonly number[],
    judged: readonly Claim[],
    told: (i: number) => T,
    load: (i: number) => string | null = () => null,
  ) => {
    const all = [];
    for (const [i, id] of ids.entries()) {
      const held = heldFile(files, id);
      const own = { ...asked.nominal, ...held.measured?.options.nominal };
      const ofUnit = { label, nominal: nominalOfUnit(own, nominal), claims: judged, load: load(i) };
      const options = outletOptions(held.measured?.options ?? {}, ofUnit);
      const { result, budgets } = await outletAssay(held, files, options, task);
      const named = { ...result, file: fileName(held.name) };
      const { file, sha256 } = named;
      const carried = { file, sha256, options: publishedOptions(carryOptions(options), result), ...told(i) };
      all.push({ measured: { result: named, budgets, ...told(i) }, carried });
    }
    return { measured: all.map(({ measured }) => measured), carried: all.map(({ carried }) => carried) };
  };
  const sweep = await measureAll(
    captures.map(({ id }) => id),
    asked.sweep,
    (i) => ({ told: captures[i]!.told }),
    (i) => loadWords(captures[i]!.told.loadW),
  );
  const stepped = await measureAll(steps, [], () => ({ told: UNTOLD_STEP }));
  const transferred = await measureAll(transfers, asked.transfers, () => ({}));
  const common = { name: label, label, rule: 'guarded', energy: [] } as const;
  return {
    measured: {
      ...{ ...common, claims, sweep: sweep.measured, steps: stepped.measured },
      transfers: transferred.measured,
    },
    told: {
      ...{ ...common, claims: worded, sweep: sweep.carried, steps: stepped.carried },
      transfers: transferred.carried,
    },
  };
}

/** From which load to which is told in words alone. */
const UNTOLD_STEP = { fromW: null, toW: null, resistive: null };

function loadWords(loadW: number | null): string | null {
  if (loadW === null) return null;
  return loadW === 0 ? 'no load' : `${loadW} W`;
}

/** A capture as one of its unit; not measured again where what is known of it says the same. */
async function outletAssay(
  held: HeldFile,
  files: HeldFiles,
  options: ToldOptions,
  task: Task,
): Promise<NonNullable<HeldFile['outlet']>['measured']> {
  const { measured } = held;
  if (measured !== null && isHeldAgainst(measured.options, options)) return measured.assays[0]!;
  const asJson = JSON.stringify(options);
  if (held.outlet?.options !== asJson) {
    // Each takes a while: others are heard in between.
    await task.pause();
    const [{ result, budgets }] = (await assayHeld(held, files, options, task)) as [Assay];
    held.outlet = { options: asJson, measured: { result, budgets } };
  }
  return held.outlet.measured;
}

/** Whether a capture alone was held against the same: label and load are mere words to what is measured. */
function isHeldAgainst({ claims = [], nominal }: ToldOptions, ofUnit: ToldOptions): boolean {
  const alone = [claims, { ...outletClaims(claims).nominal, ...nominal }];
  return JSON.stringify(alone) === JSON.stringify([ofUnit.claims, ofUnit.nominal]);
}

/** What is told of a capture as one of a unit. */
interface ToldOfUnit {
  readonly label: string;
  /** Null: as it was measured. */
  readonly load: string | null;
  /** What the capture can show of what is claimed of the unit. */
  readonly claims: readonly Claim[];
  /** As claimed of the unit. */
  readonly nominal: NonNullable<ToldOptions['nominal']>;
}

/**
 * The options of a capture as one of a unit: how it is read as told of the capture, what it is held against as told of
 * the unit. In the order and with the leavings out of a bench test, so that the sheet carries the same text.
 */
export function outletOptions(capture: ToldOptions, { label, load, ...ofUnit }: ToldOfUnit): ToldOptions {
  const untold = completeOptions({});
  // What a plan can say comes first, its nominal and instrument behind the names and ratios.
  const last: readonly OptionKey[] = ['nominal', 'instrument'];
  const planned = planKeys.map(({ option }) => option).filter((key) => !last.includes(key));
  const asked = fields.map(({ option }) => option);
  const keys = new Set([...planned, ...last, ...asked].filter((key) => !ofUnitAlone.has(key)));
  const own = { ...capture, nominal: { ...ofUnit.nominal, ...capture.nominal } };
  const told = [...keys]
    .map((key) => [key, own[key]] as const)
    .filter(([key, value]) => value !== undefined && JSON.stringify(value) !== JSON.stringify(untold[key]));
  return {
    ...Object.fromEntries(told),
    ...{ label, rule: 'guarded', claims: ofUnit.claims },
    ...(load === null ? {} : { load }),
  };
}

/** Told of the unit, whatever was told of the capture alone. */
const ofUnitAlone: ReadonlySet<OptionKey> = new Set(['label', 'load', 'claims', 'rule']);
