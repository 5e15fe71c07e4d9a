import { parseWatts } from '../../assay/loadSeen.ts';
import { parseYaml } from '../../read/text/parseYaml.ts';
import type { TransferDirection } from '../benchDocument.ts';
import { parseUnitClaim } from '../claims/parseUnitClaim.ts';
import { isRating, type UnitClaim } from '../claims/unitClaim.ts';
import type { ToldEnergy } from '../energyRun.ts';
import { directionIn } from '../transfers.ts';
import {
  type BenchPlan,
  CAPTURE_OPTION_KEYS,
  type CaptureOptions,
  captureOptions,
  type PlannedFile,
  type PlannedUnit,
} from './benchPlan.ts';
import {
  list,
  mapping,
  optionalText,
  type PlanPart,
  type PlanSource,
  parseBattery,
  parsed,
  parseEnergy,
  planPart,
  text,
} from './planPart.ts';

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
  const plan = mapping(planPart(data, source), 'a plan', [
    'units',
    'earlier',
    'rule',
    ...CAPTURE_OPTION_KEYS,
  ]);
  const options = captureOptions(plan, {});
  const units = unitsOf(plan.at('units'), options);
  return {
    units,
    earlier: list(plan.at('earlier'), 'Earlier results').map((part) =>
      text(part, 'The file of earlier results', 'last-month/bench.json'),
    ),
    rule: ruleOf(plan.at('rule')),
  };
}

function unitsOf(part: PlanPart, options: CaptureOptions): readonly PlannedUnit[] {
  const parts = list(part, 'Units');
  if (parts.length === 0)
    throw part.wrong('The plan names no unit.', '"units:" and below it a unit with its captures');
  const seen = new Set<string>();
  return parts.map((unitPart) => {
    const unit = plannedUnit(unitPart, options);
    // Names become names of files, and some file systems don't tell upper case from lower.
    const name = unit.name.toLowerCase();
    if (seen.has(name))
      throw unitPart.at('name').wrong(`Two units are named "${unit.name}".`, 'a name of its own for each');
    seen.add(name);
    return unit;
  });
}

function ruleOf(part: PlanPart): BenchPlan['rule'] {
  if (part.isAbsent) return 'guarded';
  const { data } = part;
  if (data !== 'guarded' && data !== 'simple')
    throw part.wrong('There is no such decision rule.', 'guarded or simple');
  return data;
}

const UNIT_KEYS = ['name', 'label', 'claims', 'captures', 'steps', 'transfers', 'energy'];

/** A unit of a plan: what it is called, what is claimed of it, which captures show it. */
function plannedUnit(part: PlanPart, inherited: CaptureOptions): PlannedUnit {
  mapping(part, 'a unit', [...UNIT_KEYS, ...CAPTURE_OPTION_KEYS]);
  const options = captureOptions(part, inherited);
  const name = text(part.at('name'), 'The name of the unit', 'A');
  const claims = claimsOf(part.at('claims'));
  const unit = {
    name,
    label: optionalText(part.at('label'), 'The label', 'Inverter A (red case)') ?? name,
    claims,
    captures: list(part.at('captures'), 'Captures').map((capture) => sweepCapture(capture, options)),
    steps: list(part.at('steps'), 'Captures of a step').map((capture) => stepCapture(capture, options)),
    transfers: list(part.at('transfers'), 'Captures of a transfer').map((capture) => {
      mapping(capture, 'a capture of a transfer', [...FILE_KEYS, 'direction', ...CAPTURE_OPTION_KEYS]);
      return { ...plannedFile(capture, options), ...noteOf(capture), ...directionOf(capture) };
    }),
    energy: list(part.at('energy'), 'Energy runs').map((run) => energyOf(run, claims)),
  };
  if (unit.captures.length + unit.steps.length + unit.transfers.length + unit.energy.length === 0)
    throw part.wrong(
      `The unit "${name}" has nothing to measure.`,
      '"captures:" and below it a list of files',
    );
  return unit;
}

/** A list of claims, each a text or `power: 600 W`; or the latter one below the other without a list. */
function claimsOf(part: PlanPart): readonly UnitClaim[] {
  const example = '"120 V ±5 %"';
  if (part.isAbsent) return [];
  return Array.isArray(part.data)
    ? list(part, 'Claims').flatMap((claim) =>
        typeof claim.data === 'object' && claim.data !== null
          ? keyedClaims(claim)
          : [parsed(claim, 'The claim', example, parseUnitClaim)],
      )
    : keyedClaims(part);
}

function keyedClaims(part: PlanPart): readonly UnitClaim[] {
  const { data } = part;
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    throw part.wrong('Claims form a list.', 'lines such as - "120 V ±5 %"');
  return Object.keys(data).map((word) =>
    parsed(part.at(word), 'The claim', '"120 V ±5 %"', (words) => parseUnitClaim(`${word} ${words}`)),
  );
}

const FILE_KEYS = ['file', 'note'];

function plannedFile(part: PlanPart, inherited: CaptureOptions): PlannedFile {
  return {
    file: text(part.at('file'), 'The file of the capture', '300w.csv'),
    options: captureOptions(part, inherited),
  };
}

function noteOf(part: PlanPart): { readonly note?: string } {
  const note = optionalText(part.at('note'), 'The note', '"fan running"');
  return note === undefined ? {} : { note };
}

function directionOf(part: PlanPart): { readonly direction?: TransferDirection } {
  const told = part.at('direction');
  const words = optionalText(told, 'The direction', 'mains to battery');
  if (words === undefined) return {};
  const direction = directionIn(words);
  if (direction === null)
    throw told.wrong('There is no such direction.', 'mains to battery or battery to mains');
  return { direction };
}

function sweepCapture(part: PlanPart, inherited: CaptureOptions): PlannedUnit['captures'][number] {
  mapping(part, 'a capture', [...FILE_KEYS, 'load', 'battery', ...CAPTURE_OPTION_KEYS]);
  const load = optionalText(part.at('load'), 'The load', '300 W');
  const isTold = load !== undefined && load !== 'measured';
  const battery = part.at('battery');
  const loadW = isTold ? parsed(part.at('load'), 'The load', '300 W', parseWatts) : null;
  return {
    ...plannedFile(part, inherited),
    told: {
      loadW,
      ...(battery.isAbsent ? {} : { battery: parsed(battery, 'The battery', '80 %', parseBattery) }),
      ...noteOf(part),
    },
    ...(loadW === null ? {} : { load: loadW === 0 ? 'no load' : `${loadW} W` }),
  };
}

function stepCapture(part: PlanPart, inherited: CaptureOptions): PlannedUnit['steps'][number] {
  mapping(part, 'a capture of a step', [...FILE_KEYS, 'from', 'to', 'resistive', ...CAPTURE_OPTION_KEYS]);
  const watts = (key: 'from' | 'to'): number | null =>
    part.at(key).isAbsent ? null : parsed(part.at(key), 'The load', '300 W', parseWatts);
  const { data: resistive = null } = part.at('resistive');
  if (resistive !== null && typeof resistive !== 'boolean')
    throw part.at('resistive').wrong('Whether the load is resistive is yes or no.', 'true or false');
  return {
    ...plannedFile(part, inherited),
    told: { fromW: watts('from'), toW: watts('to'), resistive, ...noteOf(part) },
  };
}

function energyOf(part: PlanPart, claims: readonly UnitClaim[]): ToldEnergy {
  mapping(part, 'an energy run', ['dcWh', 'acWh', 'ratedWh', 'note']);
  const energy = (key: string) =>
    part.at(key).isAbsent ? null : parsed(part.at(key), 'The energy', '466', parseEnergy);
  const claimed = claims.find((claim) => isRating(claim) && claim.quantity === 'capacityWh');
  const ratedWh =
    energy('ratedWh')?.value ?? (claimed !== undefined && isRating(claimed) ? claimed.rating : null);
  if (ratedWh === null)
    throw part.wrong('The rated energy is missing.', 'ratedWh, or the claim "capacity 500 Wh"');
  const [dcWh, acWh] = [energy('dcWh'), energy('acWh')];
  if (dcWh === null && acWh === null) throw part.wrong('No energy was measured.', 'dcWh, acWh or both');
  return { ratedWh, dcWh, acWh, ...noteOf(part) };
}
