import { MeasureError } from '../../base/measureError.ts';
import type { Capture, Channel, SampleRange } from '../../capture/capture.ts';
import type { SupplyCourse } from '../../figures/steps/supplyCourse.ts';
import type { Instrument } from '../../figures/uncertainty/instrument.ts';
import { roughOmega, steadyStretch } from './course.ts';
import { type Measured, type MeterOptions, measureWithMeter } from './measureWithMeter.ts';

export interface MeasuredSteady {
  readonly measured: Measured;
  /** Undefined: the whole record. */
  readonly stretch: SampleRange | undefined;
  /** As given; null where what it follows is no supply's voltage. */
  readonly course: SupplyCourse | null;
}

/**
 * A channel measured on its longest steady stretch; on the whole record where it has none, or where nothing repeats in
 * that, or it is a fragment that is no supply's: neither what it lacks nor what it has says something of the record.
 *
 * @throws MeasureError as `measureWave` does for the whole record.
 */
export function measureSteady(
  capture: Capture,
  channel: Channel,
  instrument: Instrument,
  course: SupplyCourse | null,
  options: MeterOptions,
): MeasuredSteady {
  const stretch = steadyStretch(course, capture);
  const start = roughOmega(course, capture);
  if (stretch !== undefined) {
    const measured = orNothing(() =>
      measureWithMeter(capture, channel, instrument, { ...options, stretch, roughOmega: start }),
    );
    if (measured !== null && measured.wave.periodic !== null) {
      if (!isFragment(measured, course, channel)) return { measured, stretch, course };
      return {
        measured: measureWithMeter(capture, channel, instrument, options),
        stretch: undefined,
        course: null,
      };
    }
  }
  const measured = measureWithMeter(capture, channel, instrument, { ...options, roughOmega: start });
  return { measured, stretch: undefined, course };
}

/** Cycles from which on a wave is one, of whatever frequency and shape. */
const ANY_WAVE_CYCLES = 10;
/** Of a record: without voltage for less, what is there is no fragment of it. */
const MOSTLY_DARK = 0.5;
/** Cycles that make a wave of what swings to one side only, as half of one does. */
const ONE_SIDED_CYCLES = 5;
/** No outlet gives more, an aircraft's 400 Hz and some of a time axis's error included. */
const OUTLET_HZ = 450;
/** Of the AC RMS: with more mean than this, a few cycles are pulses to one side. */
const ONE_SIDED = 0.5;

/**
 * True for some pulses to one side, or some swings faster than any outlet's, in a record that is otherwise without
 * voltage: a burst that dies out or a signal, no supply that comes and goes.
 */
function isFragment(
  { wave: { figures } }: Measured,
  course: SupplyCourse | null,
  { samples }: Channel,
): boolean {
  if (course === null || figures.cyclesUsed >= ANY_WAVE_CYCLES) return false;
  const dark = course.dark.reduce((sum, { from, to }) => sum + to - from, 0);
  if (dark <= MOSTLY_DARK * samples.length) return false;
  const { frequencyHz, mean, acRms } = figures;
  const isFast = frequencyHz.value !== null && frequencyHz.value > OUTLET_HZ;
  const isOneSided =
    figures.cyclesUsed < ONE_SIDED_CYCLES &&
    mean.value !== null &&
    acRms.value !== null &&
    Math.abs(mean.value) > ONE_SIDED * acRms.value;
  return isFast || isOneSided;
}

function orNothing<T>(measure: () => T): T | null {
  try {
    return measure();
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return null;
  }
}
