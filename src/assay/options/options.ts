import * as v from 'valibot';
import { alike, finite, list, optional, type Schema, text } from '../../base/schema.ts';
import type { Claim } from '../../judge/claims/claim.ts';
import { claimExamples } from '../../judge/claims/claimedQuantities.ts';
import { parseClaim } from '../../judge/claims/parseClaim.ts';
import type { DecisionRule } from '../../judge/decide.ts';
import { parseNominal, type ToldNominal } from '../../judge/nominal/mainsNominals.ts';
import type { Instrument } from '../../measure/doubt/instrument.ts';
import { instrumentSchema } from '../../measure/doubt/instrumentSchema.ts';
import type { Rescaling } from '../../read/rescaleCapture.ts';
import type { DirectInputChannels } from '../directInput.ts';
import type { Field, Option, Wanted } from './option.ts';
import {
  aboveZero,
  directInputIn,
  notNegative,
  notZero,
  numberOf,
  positive,
  scaleIn,
  skewIn,
  wholeNumber,
} from './optionValues.ts';

/** All that a person can tell of a capture, through any door: the command, the page, a plan. */
export interface Told {
  readonly claims: readonly Claim[];
  readonly scales: Rescaling['scales'];
  /** Names of channels to turn upside down. */
  readonly inverted: readonly string[];
  readonly rule: DecisionRule;
  /** Highest harmonic. */
  readonly orders: number;
  /** THD up to which a smooth wave is a pure sine. */
  readonly sineThdPercent: number;
  /** List each window of 10 or 12 cycles. */
  readonly perWindow: boolean;
  /** The unit under test. */
  readonly label: string;
  /** For example `300 W resistive`. */
  readonly load: string;
  readonly nominal: ToldNominal;
  /** A channel's name, `all`, or `A-B`; the first voltage channel when absent. */
  readonly voltage: string;
  /** Name of the current channel; absent: the current that goes with the voltage, where there is one. */
  readonly current: string;
  /** Channels at the unit's DC input. */
  readonly directInput: DirectInputChannels;
  /** Delays of channels, seconds: positive where a channel shows an event late. */
  readonly skews: readonly { readonly channel: string; readonly seconds: number }[];
  /** What is known of the measuring chain; the rest is ASSUMED_INSTRUMENT. */
  readonly instrument: Partial<Instrument>;
  /** Samples per second, for a file that has no time of its own. */
  readonly sampleRateHz: number;
  /** A multimeter's reading at the same time. */
  readonly meter: { readonly readingV: number; readonly dcCoupled: boolean };
}

export type OptionKey = keyof Told;

/** What a person types into the page, by the names that saved work knows. */
export type TextField =
  | ('label' | 'load' | 'nominal' | 'claims' | 'voltage' | 'current' | 'scale')
  | ('meterV' | 'sampleRateHz' | 'sineThdPercent');
/** What a person ticks there. */
export type CheckField = 'inverted' | 'meterDc';
/** A field of the page: of a capture, or of the instrument. */
export type FieldName = TextField | CheckField | keyof Instrument;

const otherThanZero: Schema<number> = v.pipe(v.number(), v.finite(), v.notValue(0));
const aboveNothing: Schema<number> = v.pipe(v.number(), v.finite(), v.gtValue(0));

/** Every option, in the order in which a sheet carries them. */
export const options: { readonly [Key in OptionKey]: Option<Told[Key], FieldName> } = {
  claims: {
    carried: list(text(1000), 1000),
    otherwise: [],
    flag: {
      ...{ rank: 1, words: '--claim <text>', parse: parseClaim, repeats: true },
      help: 'what the maker says, see below; repeatable',
    },
    field: {
      ...{ rank: 4, name: 'claims', label: 'What the box claims, one a line', kind: 'lines' },
      hint: claimExamples.join(' · '),
      parse: parseClaim,
    },
  },
  scales: {
    carried: list(v.looseObject({ channel: v.nullable(text()), factor: otherThanZero }), 1000),
    otherwise: [],
    flag: {
      ...{ rank: 9, words: '--scale <[name=]factor>', parse: scaleIn, repeats: true },
      help: 'probe or divider ratio to multiply by; without a name: the measured channel',
    },
    field: {
      parts: [
        {
          ...{ rank: 6, name: 'scale', label: 'Probe or divider ratio', kind: 'number', wanted: notZero },
          hint: 'what the file’s values are multiplied by',
        },
      ],
      together: ({ scale }) =>
        scale === undefined ? undefined : [{ channel: null, factor: scale as number }],
    },
    plan: {
      ...{ key: 'scale', shape: 'factors', what: 'A scale', example: '200' },
      note: 'ratio of the probe where the scope did not know it; or CH1: 200 on a line below',
      flag: { words: '--scale <factor>', help: 'probe or divider ratio to multiply by', isNumber: true },
    },
  },
  inverted: {
    carried: list(text(), 1000),
    otherwise: [],
    flag: {
      ...{ rank: 10, words: '--invert <name>', repeats: true },
      help: 'a channel to turn upside down, repeatable',
    },
    field: {
      parts: [{ rank: 7, name: 'inverted', label: 'Upside down', hint: '', kind: 'check' }],
      // What is measured has a name once the capture has been read: whoever reads it says so.
      together: () => undefined,
    },
  },
  rule: {
    carried: v.picklist(['guarded', 'simple']),
    otherwise: 'guarded',
    flag: {
      ...{ rank: 15, words: '--rule <name>', choices: ['guarded', 'simple'] },
      help: 'guarded: a guard band of one uncertainty; simple: none',
    },
  },
  orders: {
    carried: v.pipe(v.number(), v.integer(), v.minValue(2), v.maxValue(500)),
    otherwise: 50,
    flag: {
      rank: 16,
      words: '--orders <count>',
      help: 'highest harmonic',
      parse: numberOf(wholeNumber(2, 500)),
    },
  },
  sineThdPercent: {
    carried: aboveNothing,
    otherwise: 5,
    flag: {
      ...{ rank: 17, words: '--sine-thd <percent>', parse: positive },
      help: 'THD up to which a smooth wave is a pure sine',
    },
    field: {
      ...{ rank: 21, name: 'sineThdPercent', label: 'A sine up to a THD of, %', kind: 'number' },
      ...{ hint: '5 (common practice)', isRare: true, wanted: aboveZero },
    },
  },
  perWindow: {
    carried: v.boolean(),
    otherwise: false,
    flag: {
      ...{ rank: 18, words: '--windows', isOfAnswer: true },
      help: 'list each window of 10 or 12 cycles (IEC 61000-4-7)',
    },
  },
  label: {
    carried: text(),
    flag: { rank: 2, words: '--label <text>', help: 'the unit under test' },
    field: {
      ...{ rank: 1, name: 'label', label: 'Unit under test', hint: 'Inverter A (red case)', kind: 'text' },
    },
  },
  load: {
    carried: text(),
    flag: {
      ...{ rank: 3, words: '--load <text>' },
      help: 'the load on it, for example "300 W resistive"; else that in the file\'s name. A measured one comes first',
    },
    field: { rank: 2, name: 'load', label: 'Load on it', hint: '300 W resistive', kind: 'text' },
  },
  nominal: {
    carried: v.looseObject(
      optional({ voltageV: aboveNothing, frequencyHz: aboveNothing, ofUnit: v.boolean() }),
    ),
    flag: {
      ...{ rank: 4, words: '--nominal <text>', parse: parseNominal },
      help: 'what the outlet is meant to give, for example 120V/60Hz',
    },
    field: {
      ...{ rank: 3, name: 'nominal', label: 'Nominal', kind: 'text', parse: parseNominal },
      hint: '120V/60Hz; without it, the nearest',
      offers: ['120V/60Hz', '230V/50Hz', '240V/60Hz', '100V/50Hz', '100V/60Hz'],
    },
    plan: {
      ...{ key: 'nominal', shape: 'words', what: 'The nominal voltage', example: '120V/60Hz' },
      parse: parseNominal,
      flag: { words: '--nominal <text>', help: 'what the outlet is meant to give, for example 120V/60Hz' },
    },
  },
  voltage: {
    carried: text(),
    flag: {
      ...{ rank: 5, words: '--voltage <name>' },
      help: 'the channel to measure; all: each of them; CH1-CH2: their difference',
    },
    field: {
      ...{ rank: 5, name: 'voltage', label: 'Channel', kind: 'channel' },
      hint: 'the first voltage unless chosen',
    },
    plan: {
      ...{ key: 'voltage', shape: 'name', what: 'The name of the voltage channel', example: 'CH1' },
      note: 'name of the voltage channel',
      flag: { words: '--voltage <name>', help: 'the channel to measure' },
    },
  },
  current: {
    carried: text(),
    flag: {
      ...{ rank: 6, words: '--current <name>' },
      help: 'the current channel, or FILE or FILE:NAME of an export of its own',
    },
    field: {
      ...{ rank: 8, name: 'current', label: 'Current', kind: 'channel' },
      hint: 'the one that goes with the voltage',
    },
    plan: {
      ...{ key: 'current', shape: 'name', what: 'The name of the current channel', example: 'CH2' },
      note: 'name of the current channel, where one was recorded',
      flag: { words: '--current <name>', help: 'the channel of the current' },
    },
  },
  directInput: {
    carried: v.looseObject(alike(['voltage', 'current'], text())),
    flag: {
      ...{ rank: 7, words: '--dc-input <volts,amperes>', parse: directInputIn },
      help: 'the two channels at the DC input, for the efficiency',
    },
  },
  skews: {
    carried: list(v.looseObject({ channel: text(), seconds: finite }), 1000),
    flag: {
      ...{ rank: 8, words: '--skew <name=seconds>', parse: skewIn, repeats: true },
      help: 'how late a channel shows an event, repeatable',
    },
  },
  instrument: {
    carried: instrumentSchema,
    flag: {
      ...{ rank: 14, words: '--instrument <file>', isFile: true },
      help: 'what is known of scope and probe, as YAML, see below',
    },
    field: {
      parts: [
        instrumentField('gainPercent', 11, 'Scope gain, ± %', 'assumed 3', notNegative),
        instrumentField('probePercent', 12, 'Probe ratio, ± %', 'assumed 2', notNegative),
        instrumentField('offsetV', 13, 'Scope offset, ± V', 'assumed 1 % of the range', notNegative),
        instrumentField('bits', 14, 'Vertical bits', 'as the record shows', wholeNumber(1, 24)),
        instrumentField('timeBasePpm', 15, 'Time base, ± ppm', 'assumed 50', notNegative),
        instrumentField('distortionPercent', 16, 'Scope’s own distortion, %', 'assumed 0.3', notNegative),
        instrumentField('bandwidthHz', 17, 'Bandwidth of scope and probe, Hz', 'taken as ample', aboveZero),
        instrumentField('meterPercent', 18, 'Meter, ± %', 'assumed 1', notNegative),
        instrumentField('meterBandwidthHz', 19, 'Bandwidth of the meter, Hz', 'not known', aboveZero),
      ],
      together: (values) => {
        const told = Object.entries(values).filter(([, value]) => value !== undefined);
        return told.length === 0 ? undefined : Object.fromEntries(told);
      },
    },
    plan: {
      ...{ key: 'instrument', shape: 'figures', what: 'The instrument file', example: 'scope.yaml' },
      note: 'what is known of scope and probe; or gainPercent: 1.5 on a line below',
      flag: { words: '--instrument <file>', help: 'what is known of scope and probe, as YAML' },
    },
  },
  sampleRateHz: {
    carried: aboveNothing,
    flag: {
      ...{ rank: 11, words: '--sample-rate <hertz>', parse: positive },
      help: 'samples a second, for a file that has no time',
    },
    field: {
      ...{ rank: 20, name: 'sampleRateHz', label: 'Samples a second', kind: 'number', isRare: true },
      ...{ hint: 'for a file without a time', wanted: aboveZero },
    },
  },
  meter: {
    carried: v.looseObject({ readingV: aboveNothing, dcCoupled: v.boolean() }),
    flag: {
      parts: [
        {
          ...{ rank: 12, name: 'meterV', words: '--meter <volts>', parse: positive },
          help: "a multimeter's reading taken at the same time, for one capture",
        },
        {
          ...{ rank: 13, name: 'meterDc', words: '--meter-dc' },
          help: 'that meter counts DC in (most handheld meters do not)',
        },
      ],
      together: meterOf,
    },
    field: {
      parts: [
        {
          ...{ rank: 9, name: 'meterV', label: 'Meter reading, V', kind: 'number', wanted: aboveZero },
          hint: 'of a multimeter, at the same time',
        },
        { rank: 10, name: 'meterDc', label: 'That meter counts DC in', hint: '', kind: 'check' },
      ],
      together: meterOf,
    },
  },
};

function meterOf({ meterV, meterDc }: Readonly<Record<string, unknown>>): Told['meter'] | undefined {
  return meterV === undefined ? undefined : { readingV: meterV as number, dcCoupled: meterDc === true };
}

function instrumentField(
  name: keyof Instrument,
  rank: number,
  label: string,
  hint: string,
  wanted: Wanted,
): Field<unknown, FieldName> {
  return { name, rank, label, hint, wanted, kind: 'number', isRare: true };
}
