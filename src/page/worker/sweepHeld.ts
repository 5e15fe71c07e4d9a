import {
  type BenchDocument,
  benchUnit,
  compareUnits,
  type MeasuredUnit,
  outletClaims,
  parseUnitClaim,
} from '../../entry/benching.ts';
import { type CarriedUnit, carryOptions } from '../../entry/evidence.ts';
import type { Assay, ToldOptions } from '../../entry/measuring.ts';
import { version } from '../shipped.ts';
import { assayHeld } from './assayHeld.ts';
import { type HeldFile, type HeldFiles, heldFile } from './heldCaptures.ts';
import { outletOptions } from './outletOptions.ts';
import type { AskedUnit, Requests, Sweeps } from './requests.ts';
import type { Task } from './task.ts';

/**
 * Units over their captures at several loads. Each capture is measured anew as one of its unit: held against the
 * unit's claims, whatever it was held against alone.
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
  const units = runs.map(({ measured }) => benchUnit(measured));
  const told = runs.map((run) => run.told);
  const common = { schema: 'sineassay/sheet@1', program: version } as const;
  const bench: BenchDocument = {
    ...{ schema: 'sineassay/bench@1', units },
    ...{ comparison: compareUnits(units), failures: [] },
  };
  return {
    sweeps: units.map((result, i) => ({ ...common, picture: 'sweep', told: [told[i]!], result })),
    comparison: units.length < 2 ? null : { ...common, picture: 'comparison', told, result: bench },
  };
}

async function measureUnit(
  files: HeldFiles,
  { label, claims: worded, captures }: AskedUnit,
  task: Task,
): Promise<{ readonly measured: MeasuredUnit; readonly told: CarriedUnit }> {
  const claims = worded.map(parseUnitClaim);
  const asked = outletClaims(claims);
  const sweep = [];
  for (const { id, told } of captures) {
    const held = heldFile(files, id);
    const load = told.loadW === null ? null : told.loadW === 0 ? 'no load' : `${told.loadW} W`;
    const options = outletOptions(held.measured?.options ?? {}, { label, load, claims: asked });
    const { result, budgets } = await outletAssay(held, files, options, task);
    const carried = { file: held.name, sha256: result.sha256, options: carryOptions(options) };
    sweep.push({ measured: { result, budgets, told }, carried: { ...carried, told } });
  }
  const common = { name: label, label };
  const rest = { rule: 'guarded', energy: [] } as const;
  return {
    measured: {
      ...{ ...common, claims, ...rest, steps: [], transfers: [] },
      sweep: sweep.map(({ measured }) => measured),
    },
    told: {
      ...{ ...common, ...rest, claims: worded },
      sweep: sweep.map(({ carried }) => carried),
      ...{ steps: [], transfers: [] },
    },
  };
}

/** A capture as one of its unit; not measured again where what is known of it says the same. */
async function outletAssay(
  held: HeldFile,
  files: HeldFiles,
  options: ToldOptions,
  task: Task,
): Promise<NonNullable<HeldFile['outlet']>['measured']> {
  const [alone] = held.measured?.assays ?? [];
  if (alone !== undefined && isHeldAgainst(held.measured?.options.claims, options.claims)) return alone;
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
function isHeldAgainst(alone: ToldOptions['claims'], ofUnit: ToldOptions['claims']): boolean {
  return JSON.stringify(alone ?? []) === JSON.stringify(ofUnit ?? []);
}
