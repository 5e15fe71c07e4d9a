import { type SynthesisOptions, synthesise } from '../../src/synth/synthesise.ts';
import { writeCapture } from '../../src/synth/writeCapture.ts';

/** A capture of some thousand rows: 4.3 cycles, 120 V at 60 Hz, 8 bits, 0.5 % noise, unless said. */
export function smallCapture(options: Partial<SynthesisOptions> = {}): Uint8Array {
  return synthesise({
    shape: 'sine',
    cycles: 4.3,
    sampleRateHz: 20_000,
    noiseRatio: 0.005,
    startPhaseCycles: 0.17,
    ...options,
  }).bytes;
}

/** One sine a channel, at 60 Hz in 4.5 cycles at 20 kHz. */
export function sineChannels(
  channels: readonly { readonly name: string; readonly unit: string; readonly rms: number }[],
): Uint8Array {
  const [first, ...others] = channels.map(({ name, unit, rms }) => ({
    name,
    unit,
    samples: Float64Array.from(
      { length: 1500 },
      (_, i) => Math.SQRT2 * rms * Math.sin(2 * Math.PI * (0.1 + (60 * i) / 20_000)),
    ),
  }));
  if (first === undefined) throw new RangeError('no channel');
  return writeCapture('comma', { channels: [first, ...others], startS: 0, intervalS: 1 / 20_000 });
}
