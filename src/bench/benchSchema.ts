import * as v from 'valibot';
import {
  claimOutcomeSchema,
  claimSchema,
  failureSchema,
  kindSchema,
  limitSchema,
  nominalSchema,
} from '../assay/resultSchema.ts';
import type { Worded } from '../base/notice.ts';
import {
  alike,
  count,
  digest,
  figure,
  finite,
  list,
  notice,
  pair,
  type Schema,
  size,
  text,
} from '../base/schema.ts';
import type {
  BenchClaim,
  BenchDocument,
  BenchOverload,
  BenchPoint,
  BenchStep,
  BenchTransfer,
  BenchUnit,
  EnergyRun,
  TransferDirection,
  TransferSide,
} from './benchDocument.ts';

export const directionSchema: Schema<TransferDirection> = v.picklist([
  'mains to battery',
  'battery to mains',
]);

export const batterySchema: Schema<NonNullable<BenchPoint['battery']>> = v.union([
  v.looseObject({ percent: finite }),
  v.looseObject({ directV: finite }),
]);

const note = v.exactOptional(text());
const loadFrom = v.picklist(['told', 'measured', 'file name', 'unknown']);

const point: Schema<Worded<BenchPoint>> = v.looseObject({
  ...{ file: text(), sha256: digest, loadFrom, currentFrom: loadFrom },
  ...alike(['loadW', 'currentA', 'rmsV', 'frequencyHz', 'thdPercent', 'crestFactor'], figure),
  ...{ rmsScatterV: v.nullable(size), kind: kindSchema, ...alike(['atTheEdge', 'overload'], v.boolean()) },
  loadKind: v.exactOptional(v.picklist(['inductive', 'capacitive', 'rectifier', 'mixed'])),
  lost: v.exactOptional(text()),
  outcome: v.nullable(claimOutcomeSchema),
  ...{ battery: v.exactOptional(batterySchema), note, sheet: v.exactOptional(text()) },
});

const overload: Schema<Worded<BenchOverload>> = v.looseObject({
  ...{ file: text(), sha256: digest, note, ...alike(['loadW', 'heldS', 'rmsV'], figure) },
  loadFrom: v.exactOptional(v.picklist(['told', 'measured', 'file name'])),
  aboveRating: v.nullable(v.boolean()),
  ...{ ...alike(['heldAtLeast', 'lost'], v.boolean()), seen: text() },
});

const onset = { atW: figure, betweenW: v.nullable(pair), shownBy: text() };

const claim: Schema<Worded<BenchClaim>> = v.intersect([
  claimSchema,
  v.looseObject({ worstFile: v.nullable(text()), worstLoadW: v.nullable(finite) }),
]);

const step: Schema<Worded<BenchStep>> = v.looseObject({
  ...{ file: text(), note, direction: v.picklist(['on', 'off']) },
  ...alike(['fromW', 'toW'], v.nullable(finite)),
  resistive: v.nullable(v.boolean()),
  ...alike(['atS', 'beforeV', 'afterV', 'extremeV'], figure),
  ...alike(['deviationPercent', 'afterPercent', 'recoveryS'], figure),
});

const transfer: Schema<Worded<BenchTransfer>> = v.looseObject({
  ...{ file: text(), sha256: v.exactOptional(digest), note, ...alike(['atS', 'transferS'], figure) },
  direction: v.exactOptional(v.nullable(directionSchema)),
  directionFrom: v.exactOptional(v.picklist(['told', 'seen'])),
  notBackS: v.exactOptional(finite),
});

const side: Schema<Worded<TransferSide>> = v.looseObject({
  direction: v.nullable(directionSchema),
  ...alike(['count', 'held'], count),
  ...alike(['shortestS', 'longestS'], figure),
});

const energy: Schema<Worded<EnergyRun>> = v.looseObject({
  ...{ note, ratedWh: finite, ...alike(['dcWh', 'acWh'], figure) },
  ...alike(['usableSharePercent', 'outletSharePercent', 'conversionEfficiencyPercent'], figure),
});

/** What all captures of one unit show together. */
export const unitSchema: Schema<BenchUnit> = v.looseObject({
  ...{ ...alike(['name', 'label'], text()), earlier: v.exactOptional(text()) },
  ...{ nominal: v.nullable(nominalSchema), ratedW: v.nullable(finite), points: list(point) },
  regulation: v.looseObject({
    regulationPercent: figure,
    ...alike(['noLoadW', 'fullLoadW'], v.nullable(finite)),
  }),
  droop: v.looseObject({
    ...alike(['outputImpedanceOhm', 'openCircuitV', 'droopPercent'], figure),
    ...{ fittedLoadsW: list(finite), misfit: v.nullable(size) },
  }),
  clipping: v.looseObject(onset),
  leavesRange: v.looseObject({
    ...onset,
    range: v.nullable(v.looseObject({ limit: limitSchema, from: v.picklist(['claim', 'nominal ±10 %']) })),
  }),
  ...{ claims: list(claim), steps: list(step), transfers: list(transfer), energy: list(energy) },
  transferSides: v.exactOptional(list(side)),
  overloads: v.exactOptional(list(overload)),
  notices: list(notice),
});

/** The document of `bench`. */
export const benchSchema: Schema<BenchDocument> = v.looseObject({
  schema: v.literal('sineassay/bench@1'),
  units: list(unitSchema, 1000),
  comparison: list(v.looseObject({ ...alike(['quantity', 'name', 'unit'], text()), figures: list(figure) })),
  failures: list(failureSchema),
});
