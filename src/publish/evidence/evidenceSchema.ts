import * as v from 'valibot';
import { options as toldOptions } from '../../assay/options/options.ts';
import { resultSchema } from '../../assay/resultSchema.ts';
import { alike, digest, figure, finite, list, optional, type Schema, text } from '../../base/schema.ts';
import { batterySchema, benchSchema, directionSchema, unitSchema } from '../../bench/benchSchema.ts';
import { compareSchema } from '../../bench/compare/compareSchema.ts';
import type { ToldEnergy } from '../../bench/energyRun.ts';
import type {
  CarriedDynamics,
  CarriedOptions,
  CarriedTrace,
  CarriedUnit,
  Evidence,
  SweepEvidence,
} from '../../draw/evidence.ts';

const rule = v.picklist(['guarded', 'simple']);
const note = v.exactOptional(text());

const { claims, ...others } = Object.fromEntries(
  Object.entries(toldOptions).map(([key, { carried }]) => [key, carried]),
);

/** What was told of a capture, as a sheet carries it: within what options may be. */
const options = v.looseObject({
  claims: claims!,
  ...optional({ ...others, ...alike(['isResistiveFullStep', 'scalesInPlace'], v.boolean()) }),
}) as unknown as Schema<CarriedOptions>;

/** Far more points than a picture is wide. */
const mostDrawn = 20_000;
/** Half cycles of a record of hours. */
const longestCourse = 2_000_000;
const drawnValues = list(v.nullable(finite), mostDrawn);
const drawnTimes = list(finite, mostDrawn);

const trace: Schema<CarriedTrace> = v.looseObject({
  ...{ timeS: drawnTimes, wave: drawnValues, ideal: drawnTimes, unit: v.picklist(['V', 'A']) },
});

const anything = v.looseObject({});

/** Steps, events and curves are looked into by who draws them. */
const dynamics = v.looseObject({
  ...alike(['timeS', 'rmsHalfCycle'], list(finite, longestCourse)),
  ...{ steps: list(anything), events: list(v.looseObject({ kind: text() })), curves: list(anything) },
  distortion: v.nullable(v.looseObject(alike(['beforePercent', 'afterPercent'], figure))),
  instantaneous: v.nullable(v.looseObject({ timeS: drawnTimes, volts: drawnValues })),
}) as unknown as Schema<CarriedDynamics>;

const oneCapture = {
  ...{ options, result: resultSchema, method: list(text()), trace, dynamics: v.nullable(dynamics) },
};

const told = {
  load: v.looseObject({ loadW: v.nullable(finite), battery: v.exactOptional(batterySchema), note }),
  step: v.looseObject({
    ...{ ...alike(['fromW', 'toW'], v.nullable(finite)), resistive: v.nullable(v.boolean()), note },
  }),
};
const energy: Schema<ToldEnergy> = v.looseObject({
  ...{ ratedWh: finite, ...alike(['dcWh', 'acWh'], v.nullable(figure)), note },
});
const capture = { file: text(), sha256: digest, options };
const unit: Schema<CarriedUnit> = v.looseObject({
  ...{ name: text(), label: text(), rule, claims: list(text(1000)) },
  sweep: list(v.looseObject({ ...capture, told: told.load })),
  steps: list(v.looseObject({ ...capture, told: told.step })),
  transfers: list(v.looseObject({ ...capture, note, direction: v.exactOptional(directionSchema) })),
  energy: list(energy),
});

const common = { schema: v.literal('sineassay/sheet@1'), program: text(100) };
const side = v.looseObject({ ...common, ...oneCapture });
/** Where none is told of, nothing can be measured again. */
const ofOneUnit = list(unit, 1) as unknown as Schema<SweepEvidence['told']>;
const theme = v.picklist(['light', 'dark']);
const card = v.exactOptional(theme);

/**
 * What a sheet carries, by the kind of its picture. Names that are not known here are let through, for later versions
 * add some. The seal is none of its keys: whoever checks a sheet holds that against it, and says which part differs.
 */
export const evidenceSchema: Schema<Evidence> = v.variant('picture', [
  v.looseObject({ ...common, picture: v.picklist(['wave', 'changes']), ...oneCapture }),
  v.looseObject({ ...common, picture: v.literal('card'), ...oneCapture, theme }),
  v.looseObject({
    ...{ ...common, picture: v.literal('overlay'), basis: v.picklist(['budgets', 'results']) },
    ...{ sides: v.strictTuple([side, side]), result: compareSchema },
  }),
  v.looseObject({
    ...{ ...common, picture: v.literal('sweep'), card },
    ...{ told: ofOneUnit, result: unitSchema },
  }),
  v.looseObject({ ...common, picture: v.literal('comparison'), card, told: list(unit), result: benchSchema }),
]);
