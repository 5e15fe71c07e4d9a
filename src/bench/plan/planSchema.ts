import * as v from 'valibot';
import { planKeys } from '../../assay/options/optionLists.ts';
import { noList, type Schema } from '../../base/schema.ts';
import type { DecisionRule } from '../../judge/decide.ts';
import { instrumentFileSchema } from '../../measure/doubt/instrumentSchema.ts';

/** A text as YAML may take it: `007` for a number, `yes` for a text, `true` for neither. */
export type Word = string | number | boolean;

/** A key without a value is as good as none. */
type Maybe<T> = T | null | undefined;

/** A plan as a person writes it. Whoever captures are not told of otherwise, keys of options count for all below. */
export interface WrittenPlan extends WrittenOptions {
  readonly units: readonly WrittenUnit[];
  readonly earlier?: Maybe<readonly Word[]>;
  readonly rule?: Maybe<DecisionRule>;
}

export interface WrittenUnit extends WrittenOptions {
  readonly name: Word;
  readonly label?: Maybe<Word>;
  /** Each a text, or `power: 600 W`; or the latter one below the other without a list. */
  readonly claims?: Maybe<readonly (Word | WrittenClaims)[] | WrittenClaims>;
  readonly captures?: Maybe<readonly WrittenCapture[]>;
  readonly steps?: Maybe<readonly WrittenStep[]>;
  readonly transfers?: Maybe<readonly WrittenTransfer[]>;
  readonly energy?: Maybe<readonly WrittenEnergy[]>;
}

type WrittenClaims = Readonly<Record<string, Word>>;

/** One capture, whatever it shows. */
export interface WrittenFile extends WrittenOptions {
  readonly file: Word;
  readonly note?: Maybe<Word>;
}

export interface WrittenCapture extends WrittenFile {
  readonly load?: Maybe<Word>;
  readonly battery?: Maybe<Word>;
}

export interface WrittenStep extends WrittenFile {
  readonly from?: Maybe<Word>;
  readonly to?: Maybe<Word>;
  readonly resistive?: Maybe<boolean>;
}

export interface WrittenTransfer extends WrittenFile {
  readonly direction?: Maybe<Word>;
}

export interface WrittenEnergy {
  readonly dcWh?: Maybe<Word>;
  readonly acWh?: Maybe<Word>;
  readonly ratedWh?: Maybe<Word>;
  readonly note?: Maybe<Word>;
}

/** How captures are read: the keys that the catalogue of options has for a plan, each in the shape that it has there. */
export type WrittenOptions = object;

export type WrittenScale = number | Readonly<Record<string, number>>;

/** What a message calls a word of a plan, and an example. */
interface Wording {
  readonly what: string;
  readonly example: string;
}

type OwnWord =
  | (
      | 'name'
      | 'label'
      | 'file'
      | 'note'
      | 'earlier'
      | 'claim'
      | 'load'
      | 'battery'
      | 'from'
      | 'to'
      | 'direction'
    )
  | ('dcWh' | 'acWh' | 'ratedWh');

const load: Wording = { what: 'The load', example: '300 W' };
const energy: Wording = { what: 'The energy', example: '466' };
const own: Readonly<Record<OwnWord, Wording>> = {
  name: { what: 'The name of the unit', example: 'A' },
  label: { what: 'The label', example: 'Inverter A (red case)' },
  file: { what: 'The file of the capture', example: '300w.csv' },
  note: { what: 'The note', example: '"fan running"' },
  earlier: { what: 'The file of earlier results', example: 'last-month/bench.json' },
  claim: { what: 'The claim', example: '"120 V ±5 %"' },
  battery: { what: 'The battery', example: '80 %' },
  direction: { what: 'The direction', example: 'mains to battery' },
  ...{ load, from: load, to: load, dcWh: energy, acWh: energy, ratedWh: energy },
};

/** Of every word, by its key; each claim's is `claim`. */
export const wordings: Readonly<Record<OwnWord, Wording>> & Readonly<Record<string, Wording>> = {
  ...own,
  ...Object.fromEntries(planKeys.map(({ key, what, example }) => [key, { what, example }])),
};

// Each part has for its message what it is called: by that whoever refuses it finds the rest to say.

/** @param key - of `wordings`. */
function word(key: string): Schema<Word> {
  const { what, example } = wordings[key]!;
  const filled = v.pipe(v.string(key), v.regex(/\S/, key));
  const words = v.union([filled, v.number(key), v.boolean(key)], key);
  return v.pipe(words, v.description(what), v.examples([example]));
}

function words<const K extends string>(keys: readonly K[]): { readonly [Key in K]: Schema<Maybe<Word>> } {
  return Object.fromEntries(keys.map((key) => [key, v.nullish(word(key))])) as never;
}

function list<T>(part: Schema<T>, name: string): Schema<Maybe<T[]>> {
  return v.nullish(v.array(part, name));
}

/** Keys that are not known beforehand, each with a part of one shape. */
function keyed<T>(part: Schema<T>, name: string): Schema<Readonly<Record<string, T>>> {
  return noList(v.record(v.string(), part), name);
}

const factor: Schema<number> = v.pipe(v.number('scale'), v.finite('scale'), v.notValue(0, 'scale'));

const options = Object.fromEntries(
  planKeys.map(({ key, shape, what, note }) => {
    const shapes = {
      ...{ name: word(key), words: word(key) },
      factors: v.union([factor, keyed(factor, key)], key),
      figures: v.union([word(key), noList(instrumentFileSchema, 'figures')], key),
    };
    return [key, v.nullish(v.pipe(shapes[shape] as Schema<unknown>, v.description(note ?? what)))];
  }),
);

type Entries = Readonly<Record<string, Schema<unknown>>>;

/** A key misspelt would go unheard if others than these could stand there. */
function mapping<T>(name: string, entries: Entries): Schema<T> {
  return noList(v.strictObject(entries, name) as unknown as Schema<T>, name);
}

const file = { file: word('file'), ...words(['note']) };
const capture: Entries = { ...file, ...words(['load', 'battery']), ...options };
const step: Entries = {
  ...{ ...file, ...words(['from', 'to']), resistive: v.nullish(v.boolean('resistive')), ...options },
};
const transfer: Entries = { ...file, ...words(['direction']), ...options };
const energyRun: Entries = words(['dcWh', 'acWh', 'ratedWh', 'note']);

const claims = keyed(word('claim'), 'claims');
const unit: Entries = {
  ...{ name: word('name'), ...words(['label']) },
  claims: v.nullish(v.union([v.array(v.union([word('claim'), claims], 'claim')), claims], 'claims')),
  captures: list(mapping('a capture', capture), 'Captures'),
  steps: list(mapping('a capture of a step', step), 'Captures of a step'),
  transfers: list(mapping('a capture of a transfer', transfer), 'Captures of a transfer'),
  energy: list(mapping('an energy run', energyRun), 'Energy runs'),
  ...options,
};

const plan: Entries = {
  units: v.pipe(v.array(mapping('a unit', unit), 'Units'), v.minLength(1, 'Units')),
  earlier: list(word('earlier'), 'Earlier results'),
  rule: v.nullish(v.picklist(['guarded', 'simple'], 'rule')),
  ...options,
};

/** The shape of a plan. What its words say, each with a grammar of its own, is for who reads them. */
export const planSchema: Schema<WrittenPlan> = mapping('a plan', plan);

/** What may stand in each mapping of a plan, by the name that messages have for it. */
const mappings: Readonly<Record<string, Entries>> = {
  ...{ 'a plan': plan, 'a unit': unit, 'a capture': capture, 'an energy run': energyRun },
  ...{ 'a capture of a step': step, 'a capture of a transfer': transfer },
};

/** The keys that a mapping may have; undefined where there is no mapping of the name. */
export function keysOf(name: string): readonly string[] | undefined {
  return Object.hasOwn(mappings, name) ? Object.keys(mappings[name]!) : undefined;
}
