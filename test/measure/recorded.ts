import type { ChannelRecord } from '../../src/measure/envelope.ts';
import type { EvolvingWave } from '../../src/synth/evolvingWave.ts';
import { type EvolvingSampling, sampleEvolvingWave } from '../../src/synth/sampleWave.ts';

/** An evolving wave as a channel's record. */
export function recorded(wave: EvolvingWave, sampling: EvolvingSampling): ChannelRecord {
  const { sampleRateHz, startS = 0 } = sampling;
  return { samples: sampleEvolvingWave(wave, sampling), intervalS: 1 / sampleRateHz, startS };
}

/** What a scope with 8 bits and 0.4 % noise makes of a 230 V wave: ±400 V on the screen. */
export const EIGHT_BITS = { noiseRms: 0.004 * 230, converter: { bits: 8, fullScale: 400 } } as const;
