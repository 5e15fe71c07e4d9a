import type { Notice } from '../../base/notice.ts';
import type { Channel, SampleRange } from '../../capture/capture.ts';
import { activePower } from '../../figures/power/activePower.ts';
import type { SupplyCourse } from '../../figures/steps/supplyCourse.ts';
import { isLoadedAt } from '../load/isLoadedAt.ts';
import { type LoadSeen, loadSeen } from '../load/loadSeen.ts';
import type { MeasureResult } from '../measureDocument.ts';
import { isRestless } from './course.ts';

export interface LoadSeenInput {
  readonly voltage: Channel;
  /** Null where the capture has none. */
  readonly current: Channel | null;
  /** Null where nothing repeats. */
  readonly course: SupplyCourse | null;
  /** What the figures describe; undefined: the whole record. */
  readonly stretch: SampleRange | undefined;
  /** Between samples, s. */
  readonly intervalS: number;
  readonly spanS: readonly [number, number];
  readonly result: Pick<MeasureResult, 'power' | 'steps' | 'events'>;
  readonly told: string | undefined;
  readonly file: string;
  /** Doubts about the volts: a power on a doubted scale is none. */
  readonly isScaleDoubted: boolean;
}

/** The load of the stretch that a result's figures describe, under its key, with doubts about it. */
export function loadSeenOf(input: LoadSeenInput): {
  readonly section: { readonly loadSeen?: LoadSeen };
  readonly notices: readonly Notice[];
} {
  const { voltage, current, course, stretch, intervalS, spanS, result, isScaleDoubted } = input;
  // Over a record that changes, without a stretch of its own, a mean power is nobody's load.
  const isOneLoad = stretch !== undefined || course === null || !isRestless(course);
  const { load, notices } = loadSeen({
    activeW: (isOneLoad && !isScaleDoubted && result.power?.activeW) || null,
    ...{ told: input.told, file: input.file },
    elsewhereW: settledPowers(voltage, current, course, intervalS),
    isLoaded: isLoadedAt((spanS[0] + spanS[1]) / 2, result.steps, result.events),
  });
  return { section: load === null ? {} : { loadSeen: load }, notices };
}

/** Active power of each settled stretch beside a step. */
function settledPowers(
  { samples: volts }: Channel,
  current: Channel | null,
  course: SupplyCourse | null,
  intervalS: number,
): readonly number[] {
  if (current === null || course === null) return [];
  const periodSamples = 1 / (course.envelope.frequencyHz[0]! * intervalS);
  return course.steps
    .flatMap(({ settledBefore, settledAfter }) => [settledBefore, settledAfter])
    .flatMap((span) => activePower(volts, current.samples, span, periodSamples) ?? []);
}
