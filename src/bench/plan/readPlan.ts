import { parseYaml } from '../../bytes/parseYaml.ts';
import type { BenchPlan, CaptureOptions, PlannedUnit } from './benchPlan.ts';
import { CAPTURE_OPTION_KEYS, captureOptions } from './captureOptions.ts';
import { list, mapping, text } from './partValues.ts';
import { plannedUnit } from './plannedUnit.ts';
import { type PlanPart, type PlanSource, planPart } from './planPart.ts';

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
