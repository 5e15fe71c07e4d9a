import * as v from 'valibot';
import type { Worded } from '../base/notice.ts';
import {
  alike,
  count,
  figure,
  finite,
  list,
  measuredFigure,
  optional,
  type Schema,
  size,
  text,
} from '../base/schema.ts';
import { curveQuantities } from '../judge/curves/dynamicCurve.ts';
import type { CurveFinding, EventResult, ExcursionResult, StepResult } from './stepsDocument.ts';

const curve: Schema<CurveFinding> = v.looseObject({
  ...alike(['standard', 'edition', 'clause', 'name', 'remark'], text()),
  quantity: v.picklist(curveQuantities),
  side: v.picklist(['inside', 'outside']),
  ...alike(['afterS', 'percent', 'limitPercent', 'marginPercent'], finite),
  reachesEnd: v.boolean(),
  outcome: v.literal('information'),
  provenance: v.picklist(['public', 'memory']),
});

/** A load step. */
export const stepSchema: Schema<Worded<StepResult>> = v.looseObject({
  direction: v.picklist(['on', 'off']),
  directionBy: v.picklist(['current', 'voltage']),
  ...alike(['atS', 'beforeV', 'afterV', 'extremeV'], measuredFigure),
  ...alike(['deviationPercent', 'afterPercent', 'overshootPercent', 'recoveryS'], figure),
  recovery: list(v.looseObject({ bandPercent: size, s: figure })),
  ...alike(['beforeHz', 'afterHz', 'extremeHz'], figure),
  ...alike(['thdBeforePercent', 'thdDuringPercent', 'thdAfterPercent'], figure),
  curves: list(curve),
});

/** The load before an event, as far as it is known. */
const held = optional({
  ...{ loadW: finite, heldS: measuredFigure },
  ...alike(['heldAtLeast', 'isAfterLess'], v.boolean()),
});

/** A break of the supply, its start or end, or what a load does to it. */
export const eventSchema: Schema<Worded<EventResult>> = v.variant('kind', [
  v.looseObject({
    kind: v.picklist(['transfer', 'outage']),
    ...alike(['startS', 'endS', 'durationS', 'residualV', 'returnPeakV'], measuredFigure),
    ...{ phaseJumpDeg: figure, ...held },
  }),
  v.looseObject({
    kind: v.literal('start-up'),
    ...alike(['startS', 'returnPeakV'], measuredFigure),
    ...held,
  }),
  v.looseObject({ kind: v.literal('cut-off'), startS: measuredFigure, ...held }),
  v.looseObject({
    ...{ kind: v.literal('idle bursts'), startS: measuredFigure, bursts: count },
    ...{ burstS: figure, intervalS: figure, ...held },
  }),
  v.looseObject({
    ...{ kind: v.literal('brown-out'), endS: figure, ...held },
    ...alike(['startS', 'durationS', 'beforeV', 'lowestV'], measuredFigure),
  }),
  v.looseObject({
    ...{ kind: v.literal('hiccup'), startS: measuredFigure, count },
    ...{ periodS: figure, onS: figure, ...held },
  }),
  v.looseObject({
    ...{ kind: v.literal('failed start'), ...held },
    ...alike(['startS', 'endS', 'returnPeakV'], measuredFigure),
  }),
  v.looseObject({
    ...{ kind: v.literal('inrush'), atS: measuredFigure, peakA: figure, clipped: v.boolean() },
    ...{ halfCycleA: list(size, 1_000_000), ...held },
  }),
]);

/** The RMS of half cycles past a threshold of nominal. */
export const excursionSchema: Schema<Worded<ExcursionResult>> = v.looseObject({
  kind: v.picklist(['dip', 'swell', 'interruption']),
  ...alike(['startS', 'endS', 'durationS', 'extremeV'], finite),
  ...alike(['startSeen', 'endSeen'], v.boolean()),
});
