import { type CheckField, fields, type TextField } from '../../entry/grammar.ts';
import type { Instrument } from '../../entry/measuring.ts';

/** What a person told of a capture, as typed: an empty text is something not told. */
export type Told = { readonly [Name in TextField]: string } & { readonly [Name in CheckField]: boolean } & {
  readonly instrument: Readonly<Partial<Record<keyof Instrument, string>>>;
};

/** What a form says, field by field. What is known of the instrument stands apart, but for what is not told of it. */
export function toldAsTyped(typed: (field: (typeof fields)[number]) => string | boolean): Told {
  const instrument: [string, string][] = [];
  const own: [string, string | boolean][] = [];
  for (const field of fields) {
    const value = typed(field);
    if (field.option !== 'instrument') own.push([field.name, value]);
    else if (typeof value === 'string' && value.trim() !== '') instrument.push([field.name, value]);
  }
  return Object.fromEntries([...own, ['instrument', Object.fromEntries(instrument)]]) as unknown as Told;
}

/** What was typed into a field. */
export function typedInto(told: Told, { name, option }: (typeof fields)[number]): string | boolean {
  return option === 'instrument'
    ? (told.instrument[name as keyof Instrument] ?? '')
    : told[name as TextField | CheckField];
}

export const nothingTold: Told = toldAsTyped(({ kind }) => (kind === 'check' ? false : ''));

/** Waited for while a person types, before what was typed is taken for told. */
export const TYPING_MS = 300;
