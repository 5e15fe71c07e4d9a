import { parseWatts } from '../../assay/loadSeen.ts';
import { admitWritten } from '../../base/schema.ts';
import { parseYaml } from '../../read/text/parseYaml.ts';
import type { TransferDirection } from '../benchDocument.ts';
import { parseUnitClaim } from '../claims/parseUnitClaim.ts';
import { isRating, type UnitClaim } from '../claims/unitClaim.ts';
import type { ToldEnergy } from '../energyRun.ts';
import { directionIn } from '../transfers.ts';
import {
  type BenchPlan,
  type CaptureOptions,
  captureOptions,
  type PlannedFile,
  type PlannedUnit,
} from './benchPlan.ts';
import {
  optionallyParsed,
  optionalText,
  type PlanPart,
  type PlanSource,
  parseBattery,
  parsed,
  parseEnergy,
  parts,
  planPart,
  text,
} from './planPart.ts';
import { planRefusal } from './planRefusal.ts';
import {
  planSchema,
  type Word,
  type WrittenCapture,
  type WrittenEnergy,
  type WrittenFile,
  type WrittenPlan,
  type WrittenStep,
  type WrittenTransfer,
  type WrittenUnit,
  wordings,
} from './planSchema.ts';

/**
 * A plan from its YAML.
 *
 * @throws MeasureError `yaml.syntax`, or `plan.schema` with the line, what was expected there and what was found.
 */
export function readPlan(yaml: string): BenchPlan {
  const { data, ...source } = parseYaml(yaml);
  return planOf(data, source);
}

const unwritten: PlanSource = { lineOf: () => undefined, writtenAt: () => undefined };

/**
 * A plan from plain data of the same form.
 *
 * @throws MeasureError `plan.schema`.
 */
export function planOf(data: unknown, source: PlanSource = unwritten): BenchPlan {
  const written = admitWritten(data, planSchema, (misfit) => planRefusal(misfit, data, source));
  const plan = planPart<WrittenPlan>(written, source);
  const options = captureOptions(plan, {});
  return {
    units: unitsOf(plan.at('units'), options),
    earlier: parts(plan.at('earlier')).map(text),
    rule: written.rule ?? 'guarded',
  };
}

function unitsOf(units: PlanPart<WrittenPlan['units']>, options: CaptureOptions): readonly PlannedUnit[] {
  const seen = new Set<string>();
  return parts(units).map((part) => {
    const unit = plannedUnit(part, options);
    // Names become names of files, and some file systems don't tell upper case from lower.
    const name = unit.name.toLowerCase();
    if (seen.has(name)) throw part.at('name').wrong('plan.schema.twoUnits', { name: unit.name });
    seen.add(name);
    return unit;
  });
}

/** A unit of a plan: what it is called, what is claimed of it, which captures show it. */
function plannedUnit(part: PlanPart<WrittenUnit>, inherited: CaptureOptions): PlannedUnit {
  const options = captureOptions(part, inherited);
  const name = text(part.at('name'));
  const claims = claimsOf(part.at('claims'));
  const unit = {
    name,
    label: optionalText(part.at('label')) ?? name,
    claims,
    captures: parts(part.at('captures')).map((capture) => sweepCapture(capture, options)),
    steps: parts(part.at('steps')).map((capture) => stepCapture(capture, options)),
    transfers: parts(part.at('transfers')).map((capture) => ({
      ...plannedFile(capture, options),
      ...noteOf(capture),
      ...directionOf(capture),
    })),
    energy: parts(part.at('energy')).map((run) => energyOf(run, claims)),
  };
  if (unit.captures.length + unit.steps.length + unit.transfers.length + unit.energy.length === 0)
    throw part.wrong('plan.schema.noCapture', { name });
  return unit;
}

function claimsOf(part: PlanPart<WrittenUnit['claims']>): readonly UnitClaim[] {
  const { data } = part;
  if (data === null || data === undefined) return [];
  return Array.isArray(data)
    ? data.flatMap((_, i) => claimsAt(part.at(i as never)))
    : claimsAt(part as never);
}

/** A claim in words, or several of one key each: `power: 600 W`. */
function claimsAt(part: PlanPart<Word | Readonly<Record<string, Word>>>): readonly UnitClaim[] {
  const { data } = part;
  const { example } = wordings.claim;
  if (typeof data !== 'object') return [parsed(part as PlanPart<Word>, example, parseUnitClaim)];
  return Object.keys(data).map((word) =>
    parsed(part.at(word as never), example, (words) => parseUnitClaim(`${word} ${words}`)),
  );
}

function plannedFile(part: PlanPart<WrittenFile>, inherited: CaptureOptions): PlannedFile {
  return { file: text(part.at('file')), options: captureOptions(part, inherited) };
}

function noteOf(part: PlanPart<{ readonly note?: WrittenFile['note'] }>): { readonly note?: string } {
  const note = optionalText(part.at('note'));
  return note === undefined ? {} : { note };
}

function directionOf(part: PlanPart<WrittenTransfer>): { readonly direction?: TransferDirection } {
  const told = part.at('direction');
  const words = optionalText(told);
  if (words === undefined) return {};
  const direction = directionIn(words);
  if (direction === null) throw told.wrong('plan.schema.direction', {});
  return { direction };
}

function sweepCapture(
  part: PlanPart<WrittenCapture>,
  inherited: CaptureOptions,
): PlannedUnit['captures'][number] {
  const load = part.at('load');
  const isMeasured = optionalText(load) === 'measured';
  const loadW = isMeasured ? null : optionallyParsed(load, wordings.load.example, parseWatts);
  const battery = optionallyParsed(part.at('battery'), wordings.battery.example, parseBattery);
  return {
    ...plannedFile(part, inherited),
    told: { loadW, ...(battery === null ? {} : { battery }), ...noteOf(part) },
    ...(loadW === null ? {} : { load: loadW === 0 ? 'no load' : `${loadW} W` }),
  };
}

function stepCapture(part: PlanPart<WrittenStep>, inherited: CaptureOptions): PlannedUnit['steps'][number] {
  const watts = (key: 'from' | 'to') => optionallyParsed(part.at(key), wordings[key].example, parseWatts);
  const resistive = part.data.resistive ?? null;
  return {
    ...plannedFile(part, inherited),
    told: { fromW: watts('from'), toW: watts('to'), resistive, ...noteOf(part) },
  };
}

function energyOf(part: PlanPart<WrittenEnergy>, claims: readonly UnitClaim[]): ToldEnergy {
  const energy = (key: 'dcWh' | 'acWh' | 'ratedWh') =>
    optionallyParsed(part.at(key), wordings[key].example, parseEnergy);
  const claimed = claims.find((claim) => isRating(claim) && claim.quantity === 'capacityWh');
  const ratedWh =
    energy('ratedWh')?.value ?? (claimed !== undefined && isRating(claimed) ? claimed.rating : null);
  if (ratedWh === null) throw part.wrong('plan.schema.noRating', {});
  const [dcWh, acWh] = [energy('dcWh'), energy('acWh')];
  if (dcWh === null && acWh === null) throw part.wrong('plan.schema.noEnergy', {});
  return { ratedWh, dcWh, acWh, ...noteOf(part) };
}
