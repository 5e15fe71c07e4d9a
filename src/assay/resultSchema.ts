import * as v from 'valibot';
import type { Worded } from '../base/notice.ts';
import {
  alike,
  count,
  digest,
  figure,
  finite,
  list,
  notice,
  optional,
  pair,
  type Schema,
  size,
  text,
} from '../base/schema.ts';
import type { ClaimResult } from '../judge/claims/claim.ts';
import type { MeterComparison } from '../judge/compareMeter.ts';
import type { Limit } from '../judge/decide.ts';
import type { LoadKind } from '../judge/loadKind.ts';
import type { Nominal } from '../judge/nominal/mainsNominals.ts';
import { kindNames, type WaveformKind } from '../judge/waveform/kinds.ts';
import { currentSchema, voltageSchema } from './channelSchema.ts';
import type { LoadSeen } from './loadSeen.ts';
import type {
  FailedResult,
  InputDocument,
  MeasureDocument,
  MeasureResult,
  PowerDocument,
} from './measureDocument.ts';
import type { DigitiserDocument } from './spectraDocument.ts';
import { eventSchema, excursionSchema, stepSchema } from './stepSchemas.ts';

export const limitSchema: Schema<Limit> = v.looseObject(optional({ min: finite, max: finite }));

export const nominalSchema: Schema<Nominal> = v.looseObject({
  ...alike(['voltageV', 'frequencyHz'], finite),
  inferred: v.boolean(),
});

export const kindSchema: Schema<WaveformKind> = v.picklist(kindNames);

const outcomes = ['pass', 'conditional pass', 'conditional fail', 'fail'] as const;

export const claimOutcomeSchema: Schema<ClaimResult['outcome']> = v.picklist([...outcomes, 'not judged']);

/** What every claim held against a capture says, of one capture or of several. */
export const claimSchema: Schema<Worded<ClaimResult>> = v.looseObject({
  ...alike(['text', 'quantity'], text()),
  value: v.nullable(v.union([finite, text()])),
  limit: v.nullable(limitSchema),
  outcome: claimOutcomeSchema,
  probability: v.nullable(finite),
  ...optional({ reason: text() }),
});

const finding: Schema<MeasureResult['findings'][number]> = v.looseObject({
  ...alike(['standard', 'edition', 'clause', 'quantity'], text()),
  ...alike(['value', 'margin'], finite),
  limit: limitSchema,
  outcome: v.picklist([...outcomes, 'information']),
  side: v.picklist(['inside', 'outside']),
  provenance: v.picklist(['public', 'memory']),
  ...optional({ elsewhere: v.boolean(), remark: text() }),
});

const digitiser: Schema<Worded<DigitiserDocument>> = v.union([
  v.looseObject({
    ...alike(['noiseAndDistortionRms', 'noiseRms'], size),
    ...alike(['sinadDb', 'idealSinadDb', 'effectiveBits', 'noiseBits', 'bits'], v.nullable(finite)),
    bitsAssumed: v.boolean(),
    ...alike(['levelsUsed', 'levelsAvailable', 'missingCodes'], v.nullable(finite)),
  }),
  v.looseObject({ reason: text() }),
]);

const capture: Schema<MeasureResult['capture']> = v.looseObject({
  ...{ samples: size, ...alike(['sampleRateHz', 'startS', 'durationS'], finite) },
  bits: v.nullable(finite),
  channels: list(
    v.looseObject({
      ...{ name: text(), quantity: v.picklist(['voltage', 'current', 'other']), unit: text(), scale: finite },
    }),
  ),
  layout: text(),
  ...optional({ digitiser }),
});

/** The powers of IEEE 1459. */
const power: Schema<Worded<PowerDocument>> = v.looseObject({
  ...{ channel: text(), spanS: pair, cyclesUsed: size },
  ...alike(['activeW', 'apparentVA', 'nonactiveVar', 'fundamentalApparentVA', 'fundamentalActiveW'], figure),
  ...alike(['fundamentalReactiveVar', 'nonfundamentalApparentVA', 'currentDistortionVar'], figure),
  ...alike(
    ['voltageDistortionVar', 'harmonicApparentVA', 'harmonicActiveW', 'harmonicDistortionVar'],
    figure,
  ),
  ...alike(['powerFactor', 'displacementPowerFactor', 'harmonicPollutionPercent', 'displacementDeg'], figure),
  harmonics: list(v.looseObject({ order: count, ...alike(['activeW', 'reactiveVar'], finite) }), 1000),
});

const input: Schema<Worded<InputDocument>> = v.looseObject({
  ...alike(['voltageChannel', 'currentChannel'], text()),
  ...alike(['activeW', 'meanV', 'meanA', 'rippleV', 'rippleA'], figure),
  ...alike(['rippleVoltagePercent', 'rippleCurrentPercent'], figure),
  ...optional({ conversionEfficiencyPercent: figure }),
});

const loadSeen: Schema<LoadSeen> = v.looseObject({
  ...{ from: v.picklist(['measured', 'told', 'file name']), text: text(), watts: v.nullable(finite) },
});

const loadKind: Schema<Worded<LoadKind>> = v.looseObject({
  kind: v.picklist(['resistive', 'inductive', 'capacitive', 'rectifier', 'mixed', 'not classified']),
  reasons: list(text()),
});

const meter: Schema<Worded<MeterComparison>> = v.looseObject({
  ...{ readingV: finite, answer: v.picklist(['scale', 'average', 'calibrated']) },
  ...{ factor: finite, message: text() },
});

/** The result of one capture. */
export const resultSchema: Schema<MeasureResult> = v.looseObject({
  ...{ file: text(), sha256: digest, ...optional({ label: text(), load: text(), loadSeen }) },
  ...{ capture, nominal: v.nullable(nominalSchema) },
  ...optional({ voltage: voltageSchema, current: currentSchema, power, loadKind, input }),
  waveform: v.looseObject({ kind: kindSchema, reasons: list(text()), levels: count, atTheEdge: v.boolean() }),
  claims: list(claimSchema),
  ...{ steps: list(stepSchema), events: list(eventSchema), excursions: list(excursionSchema) },
  ...{ findings: list(finding), ...optional({ meter }), notices: list(notice) },
});

/** A capture that could not be measured, and why. */
export const failureSchema: Schema<FailedResult> = v.looseObject({
  file: text(),
  error: v.looseObject({
    ...alike(['code', 'message'], text()),
    ...optional({
      ...alike(['line', 'column'], count),
      ...alike(['expected', 'received', 'advice'], text()),
    }),
  }),
});

/** The document of `measure`. */
export const measureSchema: Schema<MeasureDocument> = v.looseObject({
  schema: v.literal('sineassay/measure@1'),
  results: list(v.union([resultSchema, failureSchema])),
});
