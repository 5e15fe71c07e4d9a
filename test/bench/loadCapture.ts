import { waveOfRms } from '../../src/synth/changedWaves.ts';
import { course, type EvolvingWave, evolvingWave } from '../../src/synth/evolvingWave.ts';
import type { WrittenChannel } from '../../src/synth/layoutTexts.ts';
import { sampleEvolvingWave } from '../../src/synth/sampleWave.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';
import { writeCapture } from '../../src/synth/writeCapture.ts';

/** A unit of 120 V at 60 Hz whose load comes on at 0 s, as an invented capture of 8 bits shows it. */
export interface LoadedRecord {
  /** Of the load, a resistor; told by the current channel alone. */
  readonly loadW: number;
  /** Levels in V: before the load, under it. */
  readonly beforeV?: number;
  readonly underV?: number;
  /** Where the voltage goes and whether it comes back, s; absent: it stays. */
  readonly lostS?: number;
  readonly backS?: number;
  /** What is left while it is lost, V RMS: a brown-out. Default 0. */
  readonly leftV?: number;
  readonly startS?: number;
  readonly durationS?: number;
  /** A second channel, in A. */
  readonly withCurrent?: boolean;
  readonly seed?: number;
}

/** The capture's file: voltage, and the load's current where it is asked for. */
export function loadCapture(record: LoadedRecord): Uint8Array {
  const { loadW, beforeV = 120, underV = 117, lostS, backS, leftV = 0 } = record;
  const { startS = -0.1, durationS = 0.4, withCurrent = false, seed = 1 } = record;
  const changes = [
    { atS: 0, to: underV },
    ...(lostS === undefined ? [] : [{ atS: lostS, to: leftV }]),
    ...(backS === undefined ? [] : [{ atS: backS, to: underV }]),
  ];
  const ohms = underV ** 2 / loadW;
  const under = (amplitude: ReturnType<typeof course>): EvolvingWave =>
    evolvingWave({
      wave: waveOfRms(waveNamed.sine({}), 1),
      frequencyHz: 60.02,
      phaseCycles: 0.13,
      amplitude,
    });
  const sampleRateHz = 20_000;
  const channel = (
    name: string,
    unit: 'V' | 'A',
    wave: EvolvingWave,
    fullScale: number,
    of: number,
  ): WrittenChannel => ({
    name,
    unit,
    samples: sampleEvolvingWave(wave, {
      ...{ sampleRateHz, startS, durationS, noiseRms: fullScale / 250, seed: of },
      converter: { bits: 8, fullScale },
    }),
  });
  const volts = channel('Output', 'V', under(course(beforeV, changes)), 200, seed);
  const amperes = course(
    0,
    changes.map(({ atS, to }) => ({ atS, to: to / ohms })),
  );
  const fullScale = 1.6 * (loadW / underV);
  return writeCapture('comma', {
    channels: withCurrent ? [volts, channel('Clamp', 'A', under(amperes), fullScale, seed + 100)] : [volts],
    ...{ startS, intervalS: 1 / sampleRateHz },
  });
}
