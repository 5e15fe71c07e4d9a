import { errorData, type MeasureError } from '../../base/measureError.ts';
import type { Misfit } from '../../base/schema.ts';
import { instrumentRefusal } from '../../measure/doubt/readInstrument.ts';
import { type PlanPart, type PlanSource, planPart } from './planPart.ts';
import { keysOf, wordings } from './planSchema.ts';

/** The error for a plan that is not as its schema says, with its line, what was expected there and what was found. */
export function planRefusal(misfit: Misfit, plan: unknown, source: PlanSource): MeasureError {
  const { path, fault, says } = misfit;
  const at = path.reduce<PlanPart<unknown>>((part, key) => part.at(key as never), planPart(plan, source));
  const key = String(path.at(-1) ?? '');
  const keys = keysOf(says);
  if (path.at(-2) === 'instrument') {
    return at.wrong('plan.schema.refused', {
      cause: errorData(instrumentRefusal(key, at.data, 1)),
      example: '',
    });
  }
  if (path.at(-1) === 'instrument' && Array.isArray(at.data)) return at.wrong('plan.schema.instrument', {});
  if (keys !== undefined) {
    if (fault === 'value') return at.wrong('plan.schema.mapping', { name: says, keys });
    if (fault === 'unknown key') return at.wrong('plan.schema.key', { name: says, key, keys });
    return key === 'units' ? noUnit(at) : unworded(at, key);
  }
  if (says === 'Units' && (at.isAbsent || Array.isArray(at.data))) return noUnit(at);
  if (says in wordings) return unworded(at, says);
  return says === 'rule' || says === 'resistive' || says === 'claims'
    ? at.wrong(`plan.schema.${says}`, {})
    : at.wrong('plan.schema.list', { name: says });
}

function noUnit(part: PlanPart<unknown>): MeasureError {
  return part.wrong('plan.schema.noUnit', {});
}

function unworded(part: PlanPart<unknown>, key: string): MeasureError {
  const called = wordings[key]!;
  if (key === 'scale')
    return part.wrong(Array.isArray(part.data) ? 'plan.schema.factors' : 'plan.schema.factor', called);
  const isMissing = part.isAbsent || part.data === '';
  return part.wrong(isMissing ? 'plan.schema.missing' : 'plan.schema.noText', called);
}
