import { asin } from '../base/elementary.ts';
import type { WaveformKind } from '../judge/waveform/kinds.ts';
import { type KnownWave, switchedKind } from './knownWave.ts';
import { edge, polylineWave, type Vertex } from './polylineWave.ts';
import { type Ringing, withRinging } from './withRinging.ts';

interface ModifiedSineOptions {
  /** Part of the cycle not spent at zero, measured between the middles of the edges; above 0, at most 1. */
  readonly dutyRatio: number;
  /** Time of one edge between zero and a top, as a fraction of the period. Default 0: a jump. */
  readonly edgeCycles?: number | undefined;
  /** How much of its height a top loses from start to end. Default 0. */
  readonly tiltRatio?: number | undefined;
  /** Default none. */
  readonly ringing?: Ringing | undefined;
}

/**
 * A "modified sine": +1, 0, −1 with dwell at zero; also called quasi-square. The positive pulse is centred
 * at phase 1/4. Each top starts at ±1 before ringing.
 *
 * @remarks Duty 1 has no dwell left and is a square wave; edges must then be jumps.
 */
export function modifiedSine(options: ModifiedSineOptions): KnownWave {
  const { dutyRatio, edgeCycles = 0, tiltRatio = 0, ringing } = options;
  if (!(dutyRatio > 0 && dutyRatio <= 1)) {
    throw new RangeError(`duty must lie above 0 and up to 1, not ${dutyRatio}`);
  }
  const rise = 0.25 - dutyRatio / 4;
  const fall = 0.25 + dutyRatio / 4;
  const end = 1 - tiltRatio;
  const [first, ...rest] = [
    ...edge(rise, 0, 1, edgeCycles),
    ...edge(fall, end, 0, edgeCycles),
    ...edge(rise + 0.5, 0, -1, edgeCycles),
    ...edge(fall + 0.5, -end, 0, edgeCycles),
  ] as const;
  const vertices = [first, ...rest] as const;
  const wave = polylineWave(dutyRatio < 1 ? 'modified sine' : 'square', vertices);
  if (ringing === undefined) return wave;
  const tops = [
    { from: rise + edgeCycles / 2, to: fall - edgeCycles / 2, sign: 1 },
    { from: 0.5 + rise + edgeCycles / 2, to: 0.5 + fall - edgeCycles / 2, sign: -1 },
  ];
  return withRinging(
    wave,
    tops,
    vertices.map((vertex) => vertex.phaseCycles),
    ringing,
  );
}

interface SquareOptions {
  /** Time of one edge from rail to rail, as a fraction of the period. Default 0: a jump. */
  readonly edgeCycles?: number | undefined;
  /** How much of its height a top loses from start to end. Default 0. */
  readonly tiltRatio?: number | undefined;
}

/** A square wave that starts each top at ±1, rising through the middle of its edge at phase 0. */
export function squareWave({ edgeCycles = 0, tiltRatio = 0 }: SquareOptions = {}): KnownWave {
  const end = 1 - tiltRatio;
  const [first, ...rest] = [...edge(0, -end, 1, edgeCycles), ...edge(0.5, end, -1, edgeCycles)] as const;
  return polylineWave('square', [first, ...rest]);
}

/**
 * A wave that switches between +1 and −1 at chosen angles, as selective harmonic elimination does: +1 from
 * phase 0, then the other way at each angle.
 *
 * Vn = (4 / (nπ)) (1 − 2 cos(n·a1) + 2 cos(n·a2) − …), n odd, peak values.
 *
 * @param anglesDeg - ascending, above 0, below 90.
 * @param edgeCycles - time of each edge as a fraction of the period. Default 0: jumps.
 * @see H. S. Patel, R. G. Hoft, IEEE Trans. Ind. Appl. IA-9(3), 1973, 310-317
 */
export function twoLevelWave(anglesDeg: readonly number[], edgeCycles: number = 0): KnownWave {
  const steps = [0, ...anglesDeg].map((angle, i) => ({
    phaseCycles: angle / 360,
    rise: i % 2 === 0 ? 2 : -2,
  }));
  return quarterWaveSteps(switchedKind('square', 2 + 4 * anglesDeg.length), steps, edgeCycles);
}

/**
 * A wave that switches between 0 and ±1 at chosen angles, as selective harmonic elimination does: on at the
 * first angle of the quarter, off at the second, and so on.
 *
 * Vn = (4 / (nπ)) (cos(n·a1) − cos(n·a2) + cos(n·a3) − …), n odd, peak values.
 *
 * @param anglesDeg - odd in number, so that the wave is on at its crest; ascending, above 0, below 90.
 * @param edgeCycles - time of each edge as a fraction of the period. Default 0: jumps.
 */
export function threeLevelWave(anglesDeg: readonly number[], edgeCycles: number = 0): KnownWave {
  if (anglesDeg.length % 2 === 0) throw new RangeError('a three-level wave needs an odd number of angles');
  const steps = anglesDeg.map((angle, i) => ({ phaseCycles: angle / 360, rise: i % 2 === 0 ? 1 : -1 }));
  return quarterWaveSteps(switchedKind('modified sine', 4 * anglesDeg.length), steps, edgeCycles);
}

/**
 * A staircase of 2k + 1 equal levels, peak 1: one step up at each angle of the first quarter.
 *
 * Vn = (4 / (nπk)) Σ cos(n·angle), n odd, peak values.
 *
 * @param anglesDeg - k of them, ascending, above 0, below 90.
 * @param edgeCycles - time of each edge as a fraction of the period. Default 0: jumps.
 */
export function staircase(anglesDeg: readonly number[], edgeCycles: number = 0): KnownWave {
  const rise = 1 / anglesDeg.length;
  const steps = anglesDeg.map((angle) => ({ phaseCycles: angle / 360, rise }));
  return quarterWaveSteps(anglesDeg.length > 1 ? 'stepped' : 'modified sine', steps, edgeCycles);
}

/**
 * Switching angles of nearest-level control: step i stands where a sine of peak k reaches i − 1/2.
 *
 * @param levels - odd, 3 and up: 2k + 1.
 * @returns k angles in degrees, ascending, in (0, 90).
 */
export function nearestLevelAngles(levels: number): readonly number[] {
  if (!(Number.isInteger(levels) && levels >= 3 && levels % 2 === 1)) {
    throw new RangeError(`levels must be odd and at least 3, not ${levels}`);
  }
  const k = (levels - 1) / 2;
  return Array.from({ length: k }, (_, i) => (asin((i + 0.5) / k) * 180) / Math.PI);
}

interface QuarterWaveStep {
  /** Where the step stands, 0 to below 1/4 cycle. */
  readonly phaseCycles: number;
  /** How much the wave rises there. */
  readonly rise: number;
}

/**
 * A wave of steps with quarter-wave symmetry, told by the steps of its first quarter.
 *
 * @param steps - ascending in phase. A step at phase 0 is the whole rise there, half of it below zero.
 * @param edgeCycles - time of each edge as a fraction of the period; 0 for jumps.
 */
function quarterWaveSteps(
  kind: WaveformKind,
  steps: readonly QuarterWaveStep[],
  edgeCycles: number,
): KnownWave {
  if (steps.length === 0 || steps.some(({ phaseCycles }) => !(phaseCycles >= 0 && phaseCycles < 0.25))) {
    throw new RangeError('steps must lie from 0 to below 90 degrees, and there must be one');
  }
  const mirrored = steps.toReversed().map(({ phaseCycles, rise }) => ({
    phaseCycles: 0.5 - phaseCycles,
    rise: -rise,
  }));
  // A step at 0 is also the mirror image of the one at 1/2, so it is not mirrored a second time.
  const half = [...steps, ...mirrored.filter(({ phaseCycles }) => phaseCycles < 0.5)];
  const cycle = [
    ...half,
    ...half.map(({ phaseCycles, rise }) => ({ phaseCycles: phaseCycles + 0.5, rise: -rise })),
  ];
  let level = steps[0]?.phaseCycles === 0 ? -steps[0].rise / 2 : 0;
  const [first, ...rest] = cycle.flatMap(({ phaseCycles, rise }) => {
    const from = level;
    level += rise;
    return edge(phaseCycles, from, level, edgeCycles);
  });
  return polylineWave(kind, [first as Vertex, ...rest]);
}
