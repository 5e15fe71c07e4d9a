import type { MeasureError } from '../../base/measureError.ts';
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
    const { message, detail } = instrumentRefusal(key, at.data, 1);
    return at.wrong(message, detail.expected ?? '', detail.advice);
  }
  if (path.at(-1) === 'instrument' && Array.isArray(at.data))
    return at.wrong('An instrument is a file or "key: number" lines.', 'gainPercent: 3');
  if (keys !== undefined) {
    const expected = `the keys ${keys.join(', ')}`;
    if (fault === 'value') return at.wrong(`This is not ${says}.`, expected);
    if (fault === 'unknown key')
      return at.wrong(`The key "${key}" is not known in ${says}.`, expected, 'check the spelling');
    return key === 'units' ? noUnit(at) : unworded(at, key);
  }
  if (says === 'Units' && (at.isAbsent || Array.isArray(at.data))) return noUnit(at);
  return says in wordings ? unworded(at, says) : at.wrong(...(sayings[says] ?? listOf(says)));
}

/** What to say of parts that are no words. */
const sayings: Readonly<Record<string, readonly [message: string, expected: string]>> = {
  rule: ['There is no such decision rule.', 'guarded or simple'],
  resistive: ['Whether the load is resistive is yes or no.', 'true or false'],
  claims: ['Claims form a list.', 'lines such as - "120 V ±5 %"'],
};

function listOf(name: string): readonly [message: string, expected: string] {
  return [`${name} form a list.`, 'lines that start with "- "'];
}

function noUnit(part: PlanPart<unknown>): MeasureError {
  return part.wrong('The plan names no unit.', '"units:" and below it a unit with its captures');
}

function unworded(part: PlanPart<unknown>, key: string): MeasureError {
  const { what, example } = wordings[key]!;
  if (key === 'scale')
    return Array.isArray(part.data)
      ? part.wrong(`${what} is a factor, or one for each channel.`, `${example}, or CH1: ${example}`)
      : part.wrong(`${what} is a number other than zero.`, `the ratio of the probe, such as ${example}`);
  const isMissing = part.isAbsent || part.data === '';
  return part.wrong(isMissing ? `${what} is missing.` : `${what} is no text.`, `a text such as ${example}`);
}
