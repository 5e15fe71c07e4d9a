import { waveOfRms } from '../../src/synth/changedWaves.ts';
import { course, type EvolvingWave, evolvingWave } from '../../src/synth/evolvingWave.ts';
import type { WrittenChannel } from '../../src/synth/layoutTexts.ts';
import { sampleEvolvingWave } from '../../src/synth/sampleWave.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';
import { writeCapture } from '../../src/synth/writeCapture.ts';

/** A capture on which something changes, or that shows the load's current too. */
export interface ChangingCapture {
  readonly file: string;
  readonly label: string;
  readonly load: string;
  /** What is to be seen, one sentence. */
  readonly about: string;
  readonly channels: readonly RecordedChannel[];
  readonly sampleRateHz: number;
  readonly startS: number;
  readonly durationS: number;
}

interface RecordedChannel {
  readonly name: string;
  readonly unit: 'V' | 'A';
  readonly wave: EvolvingWave;
  readonly noiseRms: number;
  /** Half of the range of its eight bits. */
  readonly fullScale: number;
  readonly seed: number;
}

const RED = 'Inverter A (red case)';
const GREEN = 'Inverter C (green case)';

const redWave = waveNamed.harmonics({
  harmonics: [
    { order: 3, ratio: 0.012, phaseRad: 0.3 },
    { order: 5, ratio: 0.006, phaseRad: -0.9 },
  ],
});

/** The red inverter's volts around a change at time 0, its dip or swell dying away with a time constant. */
function redStep(fromV: number, toV: number, by: number, seed: number): RecordedChannel {
  const wave = evolvingWave({
    wave: waveOfRms(redWave, 1),
    frequencyHz: 59.97,
    amplitude: course(fromV, [{ atS: 0, to: toV, transient: { by, tauS: 0.03 } }]),
    phaseCycles: 0.21,
  });
  return { name: 'Output', unit: 'V', wave, noiseRms: 0.9, fullScale: 200, seed };
}

/** What a 450 W heater makes of the red inverter: 118.6 V, and 3.79 A in step with it. */
function redHeater(): readonly RecordedChannel[] {
  const [rmsV, ohms] = [118.6, 31.26];
  const under = (rms: number): EvolvingWave =>
    evolvingWave({ wave: waveOfRms(redWave, rms), frequencyHz: 59.96, phaseCycles: 0.44 });
  return [
    { name: 'Output', unit: 'V', wave: under(rmsV), noiseRms: 0.9, fullScale: 200, seed: 107 },
    { name: 'Clamp', unit: 'A', wave: under(rmsV / ohms), noiseRms: 0.03, fullScale: 8, seed: 108 },
  ];
}

/** Mains with a little of the fifth, 13 ms of nothing, then the green inverter's staircase. */
function greenTransfer(): RecordedChannel {
  const wave = evolvingWave({
    wave: waveOfRms(waveNamed.harmonics({ harmonics: [{ order: 5, ratio: 0.021, phaseRad: 1.2 }] }), 231.4),
    frequencyHz: 50.01,
    phaseCycles: 0.08,
    breaks: [{ fromS: 0.0021, toS: 0.0151 }],
    takeovers: [
      {
        atS: 0.0151,
        aheadCycles: -0.06,
        wave: waveOfRms(waveNamed.staircase({ levels: 9, edgeCycles: 0.001 }), 229.6),
      },
    ],
  });
  return { name: 'Output', unit: 'V', wave, noiseRms: 1.6, fullScale: 400, seed: 304 };
}

/** The same evening's captures of what changes: 8 bits, fixed seeds, in files of under 400 kB. */
export const changingEvening: readonly ChangingCapture[] = [
  {
    file: 'a-red-450w-current.csv',
    label: RED,
    load: '450 W resistive',
    about: 'Voltage and current together: the load is measured, 450 W.',
    channels: redHeater(),
    ...{ sampleRateHz: 50_000, startS: -0.05, durationS: 0.1 },
  },
  {
    file: 'a-red-step-on.csv',
    label: RED,
    load: 'no load, then 600 W resistive',
    about: 'The load comes on at 0 s: 121.6 V dips to about 109 V and settles at 117.2 V.',
    channels: [redStep(121.6, 117.2, -9, 105)],
    ...{ sampleRateHz: 20_000, startS: -0.2, durationS: 0.6 },
  },
  {
    file: 'a-red-step-off.csv',
    label: RED,
    load: '600 W resistive, then no load',
    about: 'The load goes at 0 s: 117.2 V swells to about 129 V and settles at 121.6 V.',
    channels: [redStep(117.2, 121.6, 8, 106)],
    ...{ sampleRateHz: 20_000, startS: -0.2, durationS: 0.6 },
  },
  {
    file: 'c-green-transfer.csv',
    label: GREEN,
    load: '150 W resistive',
    about: 'The mains go at 2.1 ms; 13 ms later the inverter takes over.',
    channels: [greenTransfer()],
    ...{ sampleRateHz: 50_000, startS: -0.1, durationS: 0.25 },
  },
];

/** The capture's file. */
export function changingCapture(capture: ChangingCapture): Uint8Array {
  const { channels, sampleRateHz, startS, durationS, label, load } = capture;
  const [first, ...others] = channels.map((channel): WrittenChannel => {
    const { wave, noiseRms, fullScale, seed, name, unit } = channel;
    const converter = { bits: 8, fullScale };
    const samples = sampleEvolvingWave(wave, { sampleRateHz, startS, durationS, noiseRms, converter, seed });
    return { name, unit, samples };
  });
  if (first === undefined) throw new RangeError('a capture needs a channel');
  const comment = `Invented demonstration data, no real inverter: ${label}, ${load}`;
  return writeCapture('comma', {
    channels: [first, ...others],
    startS,
    intervalS: 1 / sampleRateHz,
    comment,
  });
}
