import type { Figure, MeasuredFigure } from '../base/figure.ts';
import { MeasureError } from '../base/measureError.ts';
import { type StepFinding, stepFindings } from '../judge/curves/stepFindings.ts';
import type { JudgedChannel } from '../judge/judgeChannel.ts';
import type { SupplyEvent } from '../measure/breaks/supplyEvent.ts';
import type { MeasuredChannel } from '../measure/measureChannel.ts';
import { measureWave } from '../measure/measureWave.ts';
import { waveInput } from '../measure/steadyWave.ts';
import type { LoadStep } from '../measure/steps/loadStep.ts';
import type { SampleRange } from '../read/capture.ts';
import type { Dynamics } from './assay.ts';
import { withoutBudget } from './channelFigures.ts';
import { isLoadedAt } from './loadSeen.ts';
import { outOfReach } from './reasons.ts';
import type { CurveFinding, EventResult, ExcursionResult, StepResult } from './stepsDocument.ts';

/** What a course adds to a result, and to its picture. */
interface CourseResults {
  readonly steps: readonly StepResult[];
  readonly events: readonly EventResult[];
  readonly excursions: readonly ExcursionResult[];
  readonly dynamics: Dynamics | null;
}

interface CourseTold {
  readonly orders: number;
  /** True only where the load was told to step from nothing to all of the rating or back, and is a resistor. */
  readonly isResistiveFullStep: boolean;
  /** The load that words tell, W, for events under a load that was not measured; null: not told. */
  readonly toldW: number | null;
}

/** Steps, events and excursions as the document has them, with the curves that each step is held against. */
export function courseResults(
  measured: MeasuredChannel,
  judged: JudgedChannel,
  told: CourseTold,
): CourseResults {
  const { capture, channel } = measured;
  const { course, nominal } = judged;
  const steps = course?.steps ?? [];
  const excursions = course?.excursions ?? [];
  const loads = steps.map(({ atS, direction }) => ({ atS, direction }));
  const events = judged.events.map((event) => withToldLoad(event, loads, told.toldW, judged.isScaleDoubted));
  const endS = capture.startS + capture.sampleCount * capture.intervalS;
  const { isResistiveFullStep } = told;
  const curvesOf = (step: LoadStep, i: number): readonly StepFinding[] =>
    stepFindings(
      { envelope: course!.envelope, step, untilS: steps[i + 1]?.atS.value ?? endS },
      { isResistiveFullStep, nominal },
    );
  const curves = steps.map(curvesOf);
  // Measured after what was judged, as nominal decides which stretches lie between steps.
  const thdOf = (range: SampleRange): Figure => stretchThd(measured, told.orders, range);
  const distortions = steps.map((step) => ({
    before: thdOf(step.settledBefore),
    during: thdOf(step.moving),
    after: thdOf(step.settledAfter),
  }));
  const [first] = distortions;
  const isStill = steps.length + events.length + excursions.length === 0;
  return {
    steps: steps.map((step, i) => stepResult(step, distortions[i]!, curves[i]!)),
    events: events.map(eventResult),
    excursions: excursions.map(({ extreme, ...rest }) => ({ ...rest, extremeV: extreme })),
    dynamics:
      course === null || isStill
        ? null
        : {
            timeS: course.envelope.timeS,
            rmsHalfCycle: course.envelope.rms,
            steps,
            events: [...events, ...excursions],
            curves: curves.flatMap((found, step) => found.map((finding) => ({ ...finding, step }))),
            instantaneous: {
              timeS: channel.samples.map((_, n) => capture.startS + n * capture.intervalS),
              volts: channel.samples,
            },
            distortion:
              first === undefined ? null : { beforePercent: first.before, afterPercent: first.after },
          },
  };
}

/** THD of a stretch of the record, or why there is none. */
function stretchThd(
  { capture, channel, chain: { instrument } }: MeasuredChannel,
  orders: number,
  { from, to }: SampleRange,
): Figure {
  const input = waveInput(capture, channel);
  try {
    const wave = measureWave({ ...input, samples: input.samples.subarray(from, to) }, { orders, instrument });
    return withoutBudget(wave.figures.thdPercent);
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return outOfReach({ code: 'distortion.shortStretch' });
  }
}

interface StepDistortion {
  readonly before: Figure;
  readonly during: Figure;
  readonly after: Figure;
}

function stepResult(step: LoadStep, thd: StepDistortion, curves: readonly StepFinding[]): StepResult {
  return {
    atS: withoutBudget(step.atS),
    direction: step.direction,
    directionBy: step.directionBy,
    beforeV: withoutBudget(step.before),
    afterV: withoutBudget(step.after),
    extremeV: withoutBudget(step.extreme),
    deviationPercent: withoutBudget(step.deviationPercent),
    afterPercent: withoutBudget(step.afterPercent),
    overshootPercent: withoutBudget(step.overshootPercent),
    recoveryS: withoutBudget(step.recoveryS),
    recovery: step.recovery.map(({ bandPercent, s }) => ({ bandPercent, s: withoutBudget(s) })),
    beforeHz: withoutBudget(step.beforeHz),
    afterHz: withoutBudget(step.afterHz),
    extremeHz: withoutBudget(step.extremeHz),
    thdBeforePercent: thd.before,
    thdDuringPercent: thd.during,
    thdAfterPercent: thd.after,
    curves: curves.map(curveFinding),
  };
}

function curveFinding({ curve, side, worst, reachesEnd }: StepFinding): CurveFinding {
  const { standard, edition, clause, name, quantity, provenance, remark } = curve;
  return {
    standard,
    edition,
    clause,
    name,
    quantity,
    side,
    ...worst,
    reachesEnd,
    outcome: 'information',
    provenance,
    remark,
  };
}

/**
 * An inrush has its own current; every other event happens under the load that was measured, else under the one that was
 * told, where the steps of the voltage don't show that it was off then.
 */
function withToldLoad(
  event: SupplyEvent,
  steps: readonly Pick<LoadStep, 'atS' | 'direction'>[],
  toldW: number | null,
  isScaleDoubted: boolean,
): SupplyEvent {
  const { loadW, ...rest } = event;
  if (event.kind === 'inrush') return rest;
  if (loadW !== undefined && !isScaleDoubted) return event;
  const isTold = toldW !== null && event.isAfterLess !== true && isLoadedAt(event.startS.value, steps, []);
  return isTold ? { ...rest, loadW: toldW } : rest;
}

function eventResult(event: SupplyEvent): EventResult {
  const { loadW, heldS, heldAtLeast, isAfterLess } = event;
  return {
    ...ownFigures(event),
    ...(loadW === undefined ? {} : { loadW }),
    ...(heldS === undefined ? {} : { heldS: withoutBudget(heldS) }),
    ...(heldAtLeast === undefined ? {} : { heldAtLeast }),
    ...(isAfterLess === undefined ? {} : { isAfterLess }),
  };
}

function ownFigures(event: SupplyEvent): EventResult {
  const bare = (figure: MeasuredFigure): MeasuredFigure => withoutBudget(figure);
  switch (event.kind) {
    case 'transfer':
    case 'outage':
      return {
        kind: event.kind,
        startS: bare(event.startS),
        endS: bare(event.endS),
        durationS: bare(event.durationS),
        phaseJumpDeg: withoutBudget(event.phaseJumpDeg),
        residualV: bare(event.residual),
        returnPeakV: bare(event.returnPeak),
      };
    case 'start-up':
      return { kind: event.kind, startS: bare(event.startS), returnPeakV: bare(event.returnPeak) };
    case 'cut-off':
      return { kind: event.kind, startS: bare(event.startS) };
    case 'idle bursts':
      return {
        kind: event.kind,
        startS: bare(event.startS),
        bursts: event.bursts,
        burstS: withoutBudget(event.burstS),
        intervalS: withoutBudget(event.intervalS),
      };
    case 'brown-out':
      return {
        kind: event.kind,
        startS: bare(event.startS),
        endS: withoutBudget(event.endS),
        durationS: bare(event.durationS),
        beforeV: bare(event.before),
        lowestV: bare(event.lowest),
      };
    case 'hiccup':
      return {
        kind: event.kind,
        startS: bare(event.startS),
        count: event.count,
        periodS: withoutBudget(event.periodS),
        onS: withoutBudget(event.onS),
      };
    case 'failed start':
      return {
        kind: event.kind,
        startS: bare(event.startS),
        endS: bare(event.endS),
        returnPeakV: bare(event.returnPeak),
      };
    case 'inrush':
      return {
        kind: event.kind,
        atS: bare(event.atS),
        peakA: withoutBudget(event.peakA),
        clipped: event.clipped,
        halfCycleA: event.halfCycleA,
      };
  }
}
