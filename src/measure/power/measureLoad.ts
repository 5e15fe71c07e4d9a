import { MeasureError } from '../../base/measureError.ts';
import type { Capture, Channel, SampleRange } from '../../read/capture.ts';
import { ASSUMED_INSTRUMENT } from '../doubt/instrument.ts';
import type { MeasuringChain } from '../envelope.ts';
import type { MeasuredWave, WaveInput } from '../measuredWave.ts';
import { type MeasureOptions, measureWave } from '../measureWave.ts';
import { waveInput } from '../steadyWave.ts';
import { measurePower } from './measurePower.ts';
import type { PowerFigures } from './powerFigures.ts';

/** What a load takes. */
export interface MeasuredLoad {
  /** Of the current. */
  readonly channel: Channel;
  readonly power: PowerFigures;
  /** The current's own wave; null where nothing repeats in it. */
  readonly wave: MeasuredWave | null;
}

interface LoadInput {
  readonly capture: Capture;
  readonly voltage: MeasuredWave;
  readonly current: Channel;
  /** Of the voltage. */
  readonly chain: MeasuringChain;
  readonly orders: number;
  /** The part of the record that `voltage` is, in samples; undefined: all of it. */
  readonly stretch: SampleRange | undefined;
  /** How much later the current's chain shows an event than the voltage's, s; undefined: not told. */
  readonly skewS: number | undefined;
}

/**
 * The current of a load and the power that it takes, on the stretch and at the frequency of its voltage.
 *
 * @returns null beside a voltage that doesn't repeat.
 * @remarks With nothing connected a current channel holds noise: its power still stands (about nothing), while
 * its own figures, which need a period, are left out.
 */
export function measureLoad(input: LoadInput): MeasuredLoad | null {
  const { capture, voltage, current, chain, orders, stretch, skewS } = input;
  if (voltage.periodic === null) return null;
  // An offset told in volts is the voltage channel's.
  const instrument = { ...chain.instrument, offsetV: ASSUMED_INSTRUMENT.offsetV };
  const samples = waveInput(capture, current, stretch);
  const wave = waveThatRepeats(samples, { orders, instrument, omega: voltage.periodic.fit.omega });
  const power = measurePower({
    voltage: { ...voltage, periodic: voltage.periodic },
    // Measured over all of them, its fit serves the power too.
    current:
      wave?.periodic?.fit.residual.length === samples.samples.length
        ? { ...samples, fit: wave.periodic.fit }
        : samples,
    ...(skewS === undefined ? {} : { skewS }),
    voltageChain: chain,
    currentChain: { instrument },
  });
  return { channel: current, power, wave: wave?.periodic == null ? null : wave };
}

/** Null where nothing is found that could be measured. */
function waveThatRepeats(input: WaveInput, options: MeasureOptions): MeasuredWave | null {
  try {
    return measureWave(input, options);
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return null;
  }
}
