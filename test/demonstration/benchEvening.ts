import type { SynthesisOptions } from '../../src/synth/synthesise.ts';

/** One capture of the invented evening on which a tool-lending library tests three donated inverters. */
export interface DemonstrationCapture {
  readonly file: string;
  /** The unit under test. */
  readonly label: string;
  readonly load: string;
  /** What stands on its box. */
  readonly claims: readonly string[];
  /** What is to be seen, one sentence. */
  readonly about: string;
  readonly wave: SynthesisOptions;
}

const redCase = {
  label: 'Inverter A (red case)',
  claims: ['pure sine', '120 V ±5 %', '60 Hz ±0.5 Hz'],
};
const blueCase = {
  label: 'Inverter B (blue case)',
  claims: ['pure sine', '115 V ±10 %'],
};
const greenCase = {
  label: 'Inverter C (green case)',
  claims: ['pure sine', '230 V ±5 %', 'THD < 8 %'],
};

/**
 * Each as a bench scope saves it: 8 bits on a hand-set range, some noise and offset, no whole number of
 * cycles, any phase at the start, a frequency a little off.
 */
export const benchEvening: readonly DemonstrationCapture[] = [
  {
    ...redCase,
    file: 'a-red-000w.csv',
    load: 'no load',
    about: 'A clean sine.',
    wave: {
      shape: 'harmonics',
      harmonics: [
        { order: 3, ratio: 0.008, phaseRad: 0.4 },
        { order: 5, ratio: 0.004, phaseRad: -1.1 },
      ],
      ...{ rmsV: 121.6, frequencyHz: 59.98, cycles: 5.3, startPhaseCycles: 0.137 },
      ...{ offsetV: 0.6, noiseRatio: 0.007, seed: 101, layout: 'comma' },
    },
  },
  {
    ...redCase,
    file: 'a-red-300w.csv',
    load: '300 W resistive',
    about: 'A sine with switching ripple at 19.9 kHz: far above order 50, so still a sine.',
    wave: {
      shape: 'ripple',
      ripple: { order: 331.7, ratio: 0.015 },
      ...{ rmsV: 119.9, frequencyHz: 59.97, sampleRateHz: 200_000, cycles: 4.4, startPhaseCycles: 0.622 },
      ...{ offsetV: 0.6, noiseRatio: 0.007, seed: 102, layout: 'tab', channelName: 'U' },
    },
  },
  {
    ...redCase,
    file: 'a-red-600w.csv',
    load: '600 W resistive',
    about: 'Still a sine; the voltage sags and the distortion grows.',
    wave: {
      shape: 'harmonics',
      harmonics: [
        { order: 3, ratio: 0.021, phaseRad: 0.2 },
        { order: 5, ratio: 0.012, phaseRad: 2.9 },
        { order: 7, ratio: 0.006, phaseRad: -0.7 },
      ],
      ...{ rmsV: 117.2, frequencyHz: 59.95, cycles: 6.2, startPhaseCycles: 0.871 },
      ...{ offsetV: 0.7, noiseRatio: 0.008, seed: 103, layout: 'semicolon', channelName: 'Channel A' },
    },
  },
  {
    ...redCase,
    file: 'a-red-900w.csv',
    load: '900 W resistive (overload)',
    about: 'Overload: the tops are cut flat.',
    wave: {
      shape: 'clipped',
      clipRatio: 0.78,
      ...{ rmsV: 107.4, frequencyHz: 59.91, cycles: 5.7, startPhaseCycles: 0.314 },
      ...{ offsetV: 0.7, noiseRatio: 0.008, seed: 104, layout: 'comma' },
    },
  },
  {
    ...blueCase,
    file: 'b-blue-000w.csv',
    load: 'no load',
    about: 'A modified sine. Full battery: narrow, high pulses that ring.',
    wave: {
      shape: 'modified',
      dutyRatio: 0.43,
      edgeCycles: 0.002,
      tiltRatio: 0.01,
      ringing: { ratio: 0.09, order: 83.4, decayCycles: 0.012 },
      ...{ rmsV: 117.1, frequencyHz: 60.24, cycles: 4.7, startPhaseCycles: 0.146 },
      ...{ offsetV: -0.9, noiseRatio: 0.009, seed: 201, layout: 'preamble', channelName: 'CH2' },
    },
  },
  {
    ...blueCase,
    file: 'b-blue-300w.csv',
    load: '300 W resistive',
    about: 'A modified sine near half duty: crest factor of a sine, distortion of a square wave.',
    wave: {
      shape: 'modified',
      dutyRatio: 0.51,
      edgeCycles: 0.003,
      tiltRatio: 0.03,
      ...{ rmsV: 115.3, frequencyHz: 60.22, cycles: 5.4, startPhaseCycles: 0.758 },
      ...{ offsetV: -0.9, noiseRatio: 0.009, seed: 202, layout: 'increment', channelName: 'CH2' },
    },
  },
  {
    ...blueCase,
    file: 'b-blue-600w.csv',
    load: '600 W resistive',
    about: 'The battery sags: the pulses are wider and lower, and their tops droop.',
    wave: {
      shape: 'modified',
      dutyRatio: 0.66,
      edgeCycles: 0.004,
      tiltRatio: 0.08,
      ...{ rmsV: 110.8, frequencyHz: 60.19, cycles: 5.1, startPhaseCycles: 0.415 },
      ...{ offsetV: -0.8, noiseRatio: 0.009, seed: 203, layout: 'utf16', channelName: 'CH2' },
    },
  },
  {
    ...greenCase,
    file: 'c-green-000w.csv',
    load: 'no load',
    about: 'A staircase of nine levels at 50 Hz.',
    wave: {
      shape: 'staircase',
      levels: 9,
      edgeCycles: 0.001,
      ...{ rmsV: 234.2, frequencyHz: 50.03, cycles: 4.6, startPhaseCycles: 0.292 },
      ...{ offsetV: 1.4, noiseRatio: 0.007, seed: 301, layout: 'index' },
    },
  },
  {
    ...greenCase,
    file: 'c-green-150w.csv',
    load: '150 W resistive',
    about: 'The same staircase, a little lower.',
    wave: {
      shape: 'staircase',
      levels: 9,
      edgeCycles: 0.001,
      ...{ rmsV: 229.7, frequencyHz: 50.02, cycles: 4.2, startPhaseCycles: 0.534 },
      ...{ offsetV: 1.3, noiseRatio: 0.007, seed: 302, layout: 'blanks' },
    },
  },
  {
    ...greenCase,
    file: 'c-green-400w.csv',
    load: '400 W resistive',
    about: 'Saved at the scale of the 1:200 probe: it needs --scale 200.',
    wave: {
      shape: 'staircase',
      levels: 9,
      edgeCycles: 0.001,
      probeRatio: 200,
      ...{ rmsV: 221.5, frequencyHz: 49.98, cycles: 5.2, startPhaseCycles: 0.943 },
      ...{ offsetV: 1.3, noiseRatio: 0.007, seed: 303, layout: 'comma' },
    },
  },
];
