/** A doubt about a result that still stands, as documents carry it: shown beside it, never an error. */
export interface Notice {
  /** Stable, dotted: `topic.doubt`, for example `unit.assumed`. */
  readonly code: string;
  /** One sentence a person at a bench understands, with what to do where something can be done. */
  readonly message: string;
}

/**
 * What a sentence is made of, before it is one: a stable code, and beside it what the sentence names, numbers as
 * numbers with their unit in their name. Each room lists its own codes with their facts; `words` makes the sentences.
 */
export interface Fact {
  readonly code: string;
}

/** Why something can't be said: as data, or as a document that was read says it. */
export type Reason = Fact | string;

/** Any one of a list of codes, together with its facts. */
export type FactOf<Codes> = {
  readonly [Code in keyof Codes]: { readonly code: Code } & Readonly<Codes[Code]>;
}[keyof Codes];

/** The facts of a code or problem that says all by itself. */
export type NoFacts = Readonly<Record<never, never>>;

/** Whose doubt a notice is, where that must be said. */
export interface NoticeSource {
  /** File and channel, the wider first. */
  readonly of?: readonly string[];
  /** Other files of which the same holds. */
  readonly alsoOf?: readonly string[];
}

/**
 * A value as documents carry it: notices have their message, every other fact is its sentence. What was read from a
 * document is so already.
 */
export type Worded<T> = T extends { readonly code: string; readonly message: string }
  ? T
  : T extends Fact
    ? string
    : T extends ArrayBufferView
      ? T
      : { readonly [Key in keyof T]: Key extends 'notices' ? readonly Notice[] : Worded<T[Key]> };
