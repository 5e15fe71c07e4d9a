import type { Schema } from '../../base/schema.ts';

/**
 * What one option of measuring is: how it is told through each door, and what stands where nobody tells it.
 *
 * `Name` is that of the page's fields.
 */
export interface Option<Value, Name extends string = string> {
  /** What stands where nothing is told; absent: nothing does. */
  readonly otherwise?: Value;
  /** As a sheet carries it. */
  readonly carried: Schema<unknown>;
  readonly flag: Flag<Value> | Together<Flag<unknown>, Value>;
  /** Absent: the page doesn't ask. */
  readonly field?: Field<Value, Name> | Together<Field<unknown, Name>, Value>;
  /** Absent: a plan has no such key. */
  readonly plan?: PlanKey<Value>;
}

/** What several flags or fields say together, or one that is told in another shape; undefined: nothing was told. */
export interface Together<Ask, Value> {
  readonly parts: readonly Ask[];
  readonly together: (values: Readonly<Record<string, unknown>>) => Value | undefined;
}

/** How the command asks. */
export interface Flag<Value> {
  /** `--scale <[name=]factor>`; a switch has no value. */
  readonly words: string;
  readonly help: string;
  /** Its place in the help. */
  readonly rank: number;
  /** Under which its value is handed over; absent: the option's key. */
  readonly name?: string;
  /** Absent: the text itself. @throws MeasureError whose message doesn't name the option. */
  readonly parse?: (text: string) => One<Value>;
  /** It may be given again: each adds to a list. */
  readonly repeats?: true;
  readonly choices?: readonly Value[];
  /** It names a file that says the rest, for whoever can read files. */
  readonly isFile?: true;
  /** It asks for more in the answer, and stands in the help with others that do. */
  readonly isOfAnswer?: true;
}

/** How the page asks. */
export interface Field<Value, Name extends string = string> {
  readonly name: Name;
  readonly label: string;
  /** Below it: an example, or what is assumed without it. */
  readonly hint: string;
  /** `lines`: a list, one a line. */
  readonly kind: 'text' | 'number' | 'lines' | 'check' | 'channel';
  /** Words that browsers offer while one types. */
  readonly offers?: readonly string[];
  /** Its place in the form. */
  readonly rank: number;
  /** Folded away with what is known of the instrument. */
  readonly isRare?: true;
  /** Of a number. */
  readonly wanted?: Wanted;
  /** Of a text; absent: the text itself. @throws MeasureError */
  readonly parse?: (text: string) => One<Value>;
}

/** How a plan says it, of all captures, those of a unit or one; and `bench`, by a flag, where there is no plan. */
export interface PlanKey<Value> {
  readonly key: string;
  /**
   * `name`: a text as it is written; `words`: a text with a grammar; `factors`: a number, or one for each channel;
   * `figures`: a line for each, or a file that has them.
   */
  readonly shape: 'name' | 'words' | 'factors' | 'figures';
  /** For a message: `The nominal voltage`. */
  readonly what: string;
  readonly example: string;
  /** Beside it in a plan to fill in. */
  readonly note?: string;
  /** Of words. @throws MeasureError */
  readonly parse?: (text: string) => Value;
  readonly flag: { readonly words: string; readonly help: string; readonly isNumber?: true };
}

/** A list is told one by one. */
type One<Value> = Value extends readonly (infer Each)[] ? Each : Value;

/** A number as an option wants it: how its digits are read is each door's own matter. */
export interface Wanted {
  /** `A number above zero`. */
  readonly words: string;
  readonly isRight: (value: number) => boolean;
}
