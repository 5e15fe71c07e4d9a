import type { ScaleSource } from '../measure/doubt/component.ts';
import type { Instrument } from '../measure/doubt/instrument.ts';
import type { MeasuredWave } from '../measure/measuredWave.ts';
import { activePower } from '../measure/power/nonsinusoidalPower.ts';
import { isRestless } from '../measure/steadyWave.ts';
import type { FollowedSupply } from '../measure/steps/followSupply.ts';
import type { LoadStep } from '../measure/steps/loadStep.ts';
import type { Capture, Channel, SampleRange } from '../read/capture.ts';
import type { AssayOptions } from './assayOptions.ts';
import { currentAndPower, skewOf } from './currentAndPower.ts';
import { directInput } from './directInput.ts';
import { isLoadedAt, type LoadSeen, loadSeen } from './loadSeen.ts';
import type { AssayResult } from './measureDocument.ts';
import type { AssayNotice } from './notices.ts';

/** What a voltage's result says of the load, and of what the unit takes in. */
interface LoadSections {
  readonly sections: Pick<AssayResult, 'current' | 'power' | 'loadKind' | 'input'>;
  readonly notices: readonly AssayNotice[];
}

interface LoadInput {
  readonly capture: Capture;
  readonly voltage: Channel;
  /** Null where the capture has none. */
  readonly current: Channel | null;
  readonly wave: MeasuredWave;
  /** The part of the record that `wave` is; absent: all of it. */
  readonly stretch: SampleRange | undefined;
  readonly instrument: Instrument;
  readonly scaleSource: ScaleSource;
}

/** Current, power and kind of load, where a current was captured; the DC input, where it was named. */
export function loadOf(input: LoadInput, options: AssayOptions): LoadSections {
  const { capture, voltage, current, wave, stretch, instrument, scaleSource } = input;
  const { orders = 50, skews = [], scales = [] } = options;
  const { notices, ...sections } =
    current === null
      ? { notices: [] }
      : currentAndPower({
          ...{ capture, voltage: wave, current, stretch, instrument, scaleSource, orders },
          ...skewOf(voltage.name, current.name, skews),
        });
  if (options.directInput === undefined) return { sections, notices };
  const isScaled = ({ name }: Channel): boolean => scales.some(({ channel }) => channel === name);
  const outlet = 'power' in sections ? sections.power : undefined;
  const supply = directInput(capture, options.directInput, wave, outlet, instrument, isScaled);
  return { sections: { ...sections, input: supply.input }, notices: [...notices, ...supply.notices] };
}

interface LoadSeenInput {
  readonly voltage: Channel;
  /** Null where the capture has none. */
  readonly current: Channel | null;
  /** Null where nothing repeats. */
  readonly supply: FollowedSupply | null;
  readonly steps: readonly LoadStep[];
  /** What the figures describe; undefined: the whole record. */
  readonly stretch: SampleRange | undefined;
  /** Between samples, s. */
  readonly intervalS: number;
  readonly spanS: readonly [number, number];
  readonly result: Pick<AssayResult, 'power' | 'steps' | 'events'>;
  readonly told: string | undefined;
  readonly file: string;
  /** Doubts about the volts: a power on a doubted scale is none. */
  readonly isScaleDoubted: boolean;
}

/** The load of the stretch that a result's figures describe, under its key, with doubts about it. */
export function loadSeenOf(input: LoadSeenInput): {
  readonly section: { readonly loadSeen?: LoadSeen };
  readonly notices: readonly AssayNotice[];
} {
  const { voltage, current, supply, steps, stretch, intervalS, spanS, result, isScaleDoubted } = input;
  // Over a record that changes, without a stretch of its own, a mean power is nobody's load.
  const isOneLoad = stretch !== undefined || supply === null || !isRestless(supply);
  const { load, notices } = loadSeen({
    activeW: (isOneLoad && !isScaleDoubted && result.power?.activeW) || null,
    ...{ told: input.told, file: input.file },
    elsewhereW:
      supply === null
        ? []
        : settledPowers(voltage, current, steps, 1 / (supply.envelope.frequencyHz[0]! * intervalS)),
    isLoaded: isLoadedAt((spanS[0] + spanS[1]) / 2, result.steps, result.events),
  });
  return { section: load === null ? {} : { loadSeen: load }, notices };
}

/** Active power of each settled stretch beside a step. */
function settledPowers(
  { samples: volts }: Channel,
  current: Channel | null,
  steps: readonly LoadStep[],
  periodSamples: number,
): readonly number[] {
  if (current === null) return [];
  return steps
    .flatMap(({ settledBefore, settledAfter }) => [settledBefore, settledAfter])
    .flatMap((span) => activePower(volts, current.samples, span, periodSamples) ?? []);
}
