import { type FieldName, fields, toldBy, type Wanted } from '../../entry/grammar.ts';
import {
  briefly,
  completeOptions,
  fieldOf,
  MeasureError,
  type ToldOptions,
  wordedError,
} from '../../entry/measuring.ts';
import { type Told, typedInto } from './told.ts';

interface Understood {
  /** What was told, in the terms of the core, without what is wrong. */
  readonly options: ToldOptions;
  /** What is wrong, by field. */
  readonly faults: ReadonlyMap<FieldName, string>;
}

/**
 * Understands what was told, but for `inverted`: what is measured has a name once the capture has been read.
 */
export function toldOptions(told: Told): Understood {
  const faults = new Map<FieldName, string>();
  const understood = (field: (typeof fields)[number]): unknown => {
    const typed = typedInto(told, field);
    if (typeof typed === 'boolean') return typed;
    const { name, kind, wanted, parse = (text) => text } = field;
    const tried = (text: string): unknown => {
      if (text.trim() === '') return undefined;
      try {
        return wanted === undefined ? parse(text.trim()) : numberIn(text.trim(), wanted);
      } catch (problem) {
        if (!(problem instanceof MeasureError)) throw problem;
        faults.set(name, briefly(problem, fieldOf));
        return undefined;
      }
    };
    return kind === 'lines'
      ? typed
          .split('\n')
          .map(tried)
          .filter((value) => value !== undefined)
      : tried(typed);
  };
  const values = Object.fromEntries(fields.map((field) => [field.name, understood(field)]));
  return { options: completeOptions(toldBy('field', values)), faults };
}

/** A number as people write it; the decimal mark may be a comma, but where it may as well set thousands apart. */
function numberIn(text: string, { words, isRight }: Wanted): number {
  if (/^[-+]?[1-9]\d{0,2},\d{3}$/.test(text)) {
    throw wordedError('field.comma', `${text} can be read in two ways.`, {
      advice: `Write ${text.replace(',', '')} or ${text.replace(',', '.')}.`,
    });
  }
  const value = Number(text.replace(/(?<=\d),(?=\d+$)/, '.'));
  if (Number.isFinite(value) && isRight(value)) return value;
  throw wordedError('field.number', `${words} is expected.`);
}
