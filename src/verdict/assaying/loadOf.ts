import type { Notice } from '../../base/notice.ts';
import type { Capture, Channel, SampleRange } from '../../capture/capture.ts';
import type { MeasuredWave } from '../../figures/measuredWave.ts';
import type { Instrument } from '../../figures/uncertainty/instrument.ts';
import type { ScaleSource } from '../../figures/uncertainty/scaleComponents.ts';
import type { MeasureResult } from '../measureDocument.ts';
import type { AssayOptions } from './assayOptions.ts';
import { currentAndPower } from './currentAndPower.ts';
import { skewOf } from './currentOf.ts';
import { directInput } from './directInput.ts';

/** What a voltage's result says of the load, and of what the unit takes in. */
export interface LoadSections {
  readonly sections: Pick<MeasureResult, 'current' | 'power' | 'loadKind' | 'input'>;
  readonly notices: readonly Notice[];
}

export interface LoadInput {
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
