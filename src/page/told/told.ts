import type { Instrument } from '../../entry/measuring.ts';

/** What a person told of a capture, as typed: an empty text is something not told. */
export interface Told {
  readonly label: string;
  readonly load: string;
  /** A channel's name, `all`, or `A-B`. */
  readonly voltage: string;
  readonly current: string;
  readonly scale: string;
  readonly inverted: boolean;
  readonly nominal: string;
  /** One a line. */
  readonly claims: string;
  readonly meterV: string;
  readonly meterDc: boolean;
  readonly sampleRateHz: string;
  readonly sineThdPercent: string;
  readonly instrument: Readonly<Partial<Record<keyof Instrument, string>>>;
}

export const nothingTold: Told = {
  label: '',
  load: '',
  voltage: '',
  current: '',
  scale: '',
  inverted: false,
  nominal: '',
  claims: '',
  meterV: '',
  meterDc: false,
  sampleRateHz: '',
  sineThdPercent: '',
  instrument: {},
};

/** A field of the form: a key of what is told, or of the instrument. */
export type Field = Exclude<keyof Told, 'instrument'> | keyof Instrument;

/** Waited for while a person types, before what was typed is taken for told. */
export const TYPING_MS = 300;
