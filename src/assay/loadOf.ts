import type { JudgedChannel } from '../judge/judgeChannel.ts';
import type { MeasuredChannel } from '../measure/measureChannel.ts';
import { activePower } from '../measure/power/nonsinusoidalPower.ts';
import { isRestless } from '../measure/steadyWave.ts';
import type { LoadStep } from '../measure/steps/loadStep.ts';
import type { Channel } from '../read/capture.ts';
import type { AssayOptions } from './assayOptions.ts';
import { currentAndPower } from './currentAndPower.ts';
import { directInput } from './directInput.ts';
import { isLoadedAt, type LoadSeen, loadSeen } from './loadSeen.ts';
import type { AssayResult } from './measureDocument.ts';
import type { AssayNotice } from './notices.ts';

/** What a voltage's result says of the load, and of what the unit takes in. */
interface LoadSections {
  readonly sections: Pick<AssayResult, 'current' | 'power' | 'loadKind' | 'input'>;
  readonly notices: readonly AssayNotice[];
}

/** Current, power and kind of load, where a current was captured; the DC input, where it was named. */
export function loadOf(
  { capture, wave, load, chain }: MeasuredChannel,
  { loadKind }: JudgedChannel,
  { scales = [], directInput: named }: AssayOptions,
): LoadSections {
  const { notices, ...sections } =
    load === null ? { notices: [] } : currentAndPower(load, wave.figures, loadKind);
  if (named === undefined) return { sections, notices };
  const isScaled = ({ name }: Channel): boolean => scales.some(({ channel }) => channel === name);
  const outlet = 'power' in sections ? sections.power : undefined;
  const supply = directInput(capture, named, wave, outlet, chain.instrument, isScaled);
  return { sections: { ...sections, input: supply.input }, notices: [...notices, ...supply.notices] };
}

interface LoadSeenInput {
  /** Null where the capture has none. */
  readonly current: Channel | null;
  readonly result: Pick<AssayResult, 'power' | 'steps' | 'events'>;
  readonly told: string | undefined;
  readonly file: string;
}

/** The load of the stretch that a result's figures describe, under its key, with doubts about it. */
export function loadSeenOf(
  { channel, supply, stretch, wave, capture }: MeasuredChannel,
  { course, isScaleDoubted }: JudgedChannel,
  { current, result, told, file }: LoadSeenInput,
): {
  readonly section: { readonly loadSeen?: LoadSeen };
  readonly notices: readonly AssayNotice[];
} {
  const { spanS } = wave.figures;
  // Over a record that changes, without a stretch of its own, a mean power is nobody's load.
  const isOneLoad = stretch !== undefined || supply === null || !isRestless(supply);
  const { load, notices } = loadSeen({
    // A power on a doubted scale is none.
    activeW: (isOneLoad && !isScaleDoubted && result.power?.activeW) || null,
    ...{ told, file },
    elsewhereW:
      current === null || course === null
        ? []
        : settledPowers(
            channel,
            current,
            course.steps,
            1 / (course.envelope.frequencyHz[0]! * capture.intervalS),
          ),
    isLoaded: isLoadedAt((spanS[0] + spanS[1]) / 2, result.steps, result.events),
  });
  return { section: load === null ? {} : { loadSeen: load }, notices };
}

/** Active power of each settled stretch beside a step: rough, and only here, as nominal decides what is one. */
function settledPowers(
  { samples: volts }: Channel,
  current: Channel,
  steps: readonly LoadStep[],
  periodSamples: number,
): readonly number[] {
  return steps
    .flatMap(({ settledBefore, settledAfter }) => [settledBefore, settledAfter])
    .flatMap((span) => activePower(volts, current.samples, span, periodSamples) ?? []);
}
