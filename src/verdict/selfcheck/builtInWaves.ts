import type { KnownWave } from '../../signal/synthesis/knownWave.ts';
import { waveNamed } from '../../signal/synthesis/waveNamed.ts';

/** The waves that the analyser checks itself on: every kind, and the hard ones of each. */
export const builtInWaves: readonly (readonly [name: string, wave: KnownWave])[] = [
  ['sine', waveNamed.sine({})],
  [
    'sine, 3 % third and fifth',
    waveNamed.harmonics({ harmonics: [3, 5].map((order) => ({ order, ratio: 0.03, phaseRad: order })) }),
  ],
  ['clipped sine', waveNamed.clipped({ clipRatio: 0.75 })],
  ['triangle', waveNamed.triangle({})],
  ['half-wave', waveNamed.halfwave({})],
  ['modified sine, duty 35 %', waveNamed.modified({ dutyRatio: 0.35, edgeCycles: 0.004 })],
  ['modified sine, duty 50 %', waveNamed.modified({ dutyRatio: 0.5 })],
  ['modified sine, droop 10 %', waveNamed.modified({ dutyRatio: 0.8, tiltRatio: 0.1, edgeCycles: 0.01 })],
  ['square', waveNamed.square({ tiltRatio: 0.05 })],
  ['staircase of 5 levels', waveNamed.staircase({ levels: 5 })],
  ['staircase of 17 levels', waveNamed.staircase({ levels: 17 })],
];
