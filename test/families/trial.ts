import { assayCapture } from '../../src/assay/assayCapture.ts';
import type { AssayResult } from '../../src/assay/measureDocument.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { chance } from './drawnCapture.ts';
import type { Draw, Family } from './families.ts';
import { shapeTruth } from './shapes.ts';

/** What came of the draws of one family. */
export interface Trial {
  readonly family: string;
  readonly draws: number;
  /** In words, each with the draw that it was seen on. */
  readonly faults: readonly string[];
  /** Of each figure: intervals stated, and those that hold the truth. */
  readonly figures: ReadonlyMap<string, { stated: number; held: number }>;
}

/** Draw a family's captures, measure each the whole way from its bytes, and hold what is said against what is true. */
export function trialOf(family: Family, draws: number, seed: number): Trial {
  const faults: string[] = [];
  const figures = new Map<string, { stated: number; held: number }>();
  for (let i = 0; i < draws; i++) {
    const draw = family.draw(chance(seed + 7919 * i));
    const fault = (text: string): void => void faults.push(`#${i}: ${text} [${draw.words}]`);
    let result: AssayResult;
    try {
      const capture = readCapture(new TextEncoder().encode(draw.csv));
      result = assayCapture(capture, { file: 'drawn.csv', sha256: '' })[0]!.result;
    } catch (problem) {
      fault(`refused: ${(problem as Error).message}`);
      continue;
    }
    hold(draw, result, fault, (figure, held) => {
      const score = figures.get(figure) ?? { stated: 0, held: 0 };
      figures.set(figure, { stated: score.stated + 1, held: score.held + (held ? 1 : 0) });
    });
  }
  return { family: family.name, draws, faults, figures };
}

type AnyFigure = { value: number | null; uncertainty?: number; notAbove?: number };

function hold(
  draw: Draw,
  result: AssayResult,
  fault: (text: string) => void,
  score: (figure: string, held: boolean) => void,
): void {
  const { kinds, events = [], mayBe = [], steps = 0, frequencyHz, shape, figures = [] } = draw;
  if (kinds !== undefined && !kinds.includes(result.waveform.kind))
    fault(`"${result.waveform.kind}": ${result.waveform.reasons.join('; ')}`);
  const seen: string[] = result.events.map(({ kind }) => kind);
  for (const kind of seen)
    if (!events.includes(kind) && !mayBe.includes(kind)) fault(`event "${kind}" that never was`);
  for (const kind of events)
    if (!seen.includes(kind)) fault(`no "${kind}" seen, but ${seen.join(', ') || 'nothing'}`);
  if (result.steps.length > steps) fault(`${result.steps.length} steps, of ${steps} at most`);
  const missed = draw.also?.(result) ?? null;
  if (missed !== null) fault(missed);
  const { voltage } = result;
  if (voltage === undefined || frequencyHz === undefined || shape === undefined) return;
  const truth = shapeTruth(shape);
  const truths = {
    rmsV: truth.rms,
    frequencyHz,
    crestFactor: truth.crestFactor,
    formFactor: truth.formFactor,
    thdPercent: truth.thdPercent(voltage.thdOrders),
  };
  for (const figure of figures) judge(figure, voltage[figure] as AnyFigure, truths[figure]);
  if (draw.resistorW !== undefined) {
    const power = result.power as unknown as Record<string, AnyFigure>;
    judge('activeW', power.activeW!, draw.resistorW);
    judge('powerFactor', power.powerFactor!, 1);
    // The current is a copy of the voltage, distortion and all: V1·IH and VH·I1 are P·V1·VH/V², while what neither
    // heats nor is needed (N, Q1, DH) is nothing.
    const besideV = Math.sqrt(truth.rms ** 2 - truth.fundamental ** 2);
    const distortionVar = (draw.resistorW * truth.fundamental * besideV) / truth.rms ** 2;
    for (const key of ['currentDistortionVar', 'voltageDistortionVar'])
      judge(key, power[key]!, distortionVar);
    judge(
      'nonfundamentalApparentVA',
      power.nonfundamentalApparentVA!,
      Math.sqrt(draw.resistorW ** 2 * (1 - (truth.fundamental / truth.rms) ** 4)),
    );
    for (const key of ['nonactiveVar', 'fundamentalReactiveVar', 'harmonicDistortionVar'])
      judge(key, power[key]!, 0);
  }

  function judge(name: string, figure: AnyFigure, true_: number): void {
    if (figure.value === null) return;
    const held =
      figure.notAbove === undefined
        ? Math.abs(figure.value - true_) <= figure.uncertainty!
        : Math.abs(true_) <= figure.notAbove;
    score(name, held);
  }
}
