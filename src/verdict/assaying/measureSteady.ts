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
}

/**
 * A channel measured on its longest steady stretch; on the whole record where it has none, or where nothing repeats in
 * that: what a fragment lacks says nothing of the record.
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
    if (measured !== null && measured.wave.periodic !== null) return { measured, stretch };
  }
  const measured = measureWithMeter(capture, channel, instrument, { ...options, roughOmega: start });
  return { measured, stretch: undefined };
}

function orNothing<T>(measure: () => T): T | null {
  try {
    return measure();
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return null;
  }
}
