import { InvalidArgumentError, Option } from 'commander';
import { briefly, type Flag, flags, MeasureError, type OptionKey } from '../entry/grammar.ts';

/** A flag of the catalogue in commander's terms; its value is handed over by the flag's name. */
export function commandOption(flag: (typeof flags)[number]): Option {
  const { words, help, name, parse, repeats = false, choices, otherwise } = flag;
  const option = new Option(words, help);
  option.attributeName = () => name;
  if (choices !== undefined) option.choices(choices as readonly string[]);
  else if (parse !== undefined || repeats) option.argParser(parserOf(parse ?? ((text) => text), repeats));
  // A list that is empty or a switch that is off is no news in a help text.
  if (typeof otherwise === 'string' || typeof otherwise === 'number') option.default(otherwise);
  return option;
}

/** The same as a plan has it: its text, which the plan understands; nothing stands where it isn't given. */
export function plainOption(key: OptionKey): Option {
  const { words, help, repeats, choices } = flags.find(({ option }) => option === key)!;
  const option = new Option(words, help);
  if (choices !== undefined) option.choices(choices as readonly string[]);
  return repeats ? option.argParser(parserOf((text) => text, true)) : option;
}

function parserOf(parse: NonNullable<Flag<unknown>['parse']>, repeats: boolean) {
  const one = inCommander(parse);
  return (text: string, before: unknown): unknown =>
    repeats ? [...((before as readonly unknown[] | undefined) ?? []), one(text)] : one(text);
}

/** What the core refuses, in commander's terms. */
export function inCommander<T>(parse: (text: string) => T): (text: string) => T {
  return (text) => {
    try {
      return parse(text);
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      throw new InvalidArgumentError(briefly(error));
    }
  };
}
