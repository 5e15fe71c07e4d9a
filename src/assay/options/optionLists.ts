import type { Field, Flag, PlanKey, Together } from './option.ts';
import { type FieldName, type OptionKey, options, type Told } from './options.ts';

/** What is told; what is not may stand as undefined, as forms and flags have it. */
export type PartlyTold = { readonly [Key in OptionKey]?: Told[Key] | undefined };

/** An option's flag, field or key in a plan. */
export type Of<Ask> = Ask & { readonly option: OptionKey };

const keys = Object.keys(options) as OptionKey[];

/** The command's flags, in the order of its help, each with what stands where it isn't given. */
export const flags: readonly Of<Flag<unknown> & { readonly name: string; readonly otherwise: unknown }>[] =
  keys
    .flatMap((option) => {
      const { flag, otherwise } = options[option];
      return partsOf<Flag<unknown>>(flag).map((part) => ({ option, name: option, otherwise, ...part }));
    })
    .sort((a, b) => a.rank - b.rank);

/** The page's fields, in the order of its form. */
export const fields: readonly Of<Field<unknown, FieldName>>[] = keys
  .flatMap((option) => {
    const { field } = options[option];
    return field === undefined
      ? []
      : partsOf<Field<unknown, FieldName>>(field).map((part) => ({ option, ...part }));
  })
  .sort((a, b) => a.rank - b.rank);

/** The keys that a plan, a unit or a capture of it may have, in the order of the command's help. */
export const planKeys: readonly Of<PlanKey<unknown>>[] = [
  ...new Set(flags.map(({ option }) => option)),
].flatMap((option) => {
  const plan: PlanKey<unknown> | undefined = options[option].plan;
  return plan === undefined ? [] : [{ option, ...plan }];
});

/** What flags or fields say, by their names, in the terms of the options. */
export function toldBy(door: 'flag' | 'field', values: Readonly<Record<string, unknown>>): PartlyTold {
  return Object.fromEntries(
    keys.flatMap((key) => {
      const ask = options[key][door];
      if (ask === undefined) return [];
      const names = partsOf<{ readonly name?: string }>(ask).map(({ name = key }) => name);
      const own = Object.fromEntries(names.map((name) => [name, values[name]]));
      return [[key, 'together' in ask ? ask.together(own) : values[names[0]!]]];
    }),
  );
}

function partsOf<Ask>(ask: Ask | Together<Ask, unknown>): readonly Ask[] {
  return typeof ask === 'object' && ask !== null && 'together' in ask ? ask.parts : [ask as Ask];
}

/** `--scale` of `--scale <factor>`. */
export function flagName({ words }: Pick<Flag<unknown>, 'words'>): string {
  return words.split(' ', 1)[0]!;
}
