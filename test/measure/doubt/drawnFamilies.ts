import { ASSUMED_INSTRUMENT } from '../../../src/measure/doubt/instrument.ts';
import { gaussianNumbers, randomNumbers } from '../../../src/signal/randomNumbers.ts';

/** A wave in closed form and what is true of it; null: not held against anything. */
export interface Drawn {
  /** Volts at a time in seconds. */
  readonly wave: (timeS: number) => number;
  readonly frequencyHz: number;
  readonly rms: number | null;
  readonly thdPercent: number | null;
  /** About the largest value. */
  readonly full: number;
  readonly cycles: number;
  readonly sampleRateHz: number;
  /** Samples written for each that was taken, 1 where none is interpolated; by lines, or by a windowed sinc. */
  readonly written: number;
  readonly between: 'lines' | 'sinc';
}

/** Numbers of one run. */
export interface Draw {
  readonly between: (low: number, high: number) => number;
  readonly pick: <T>(choices: readonly [T, ...T[]]) => T;
  readonly normal: () => number;
}

export function draw(seed: number): Draw {
  const uniform = randomNumbers(seed);
  return {
    between: (low, high) => low + (high - low) * uniform(),
    pick: (choices) => choices[Math.floor(uniform() * choices.length)]!,
    normal: gaussianNumbers(randomNumbers(seed + 1e6)),
  };
}

const TURN = 2 * Math.PI;

/** A sine with up to so many percent of each of orders 3, 5 and 7. */
function sine({ between, pick }: Draw, mostPercent = 3): Drawn {
  const frequencyHz = pick([50, 60]) * (1 + between(-0.01, 0.01));
  const amplitude = Math.SQRT2 * between(100, 240);
  const start = between(0, TURN);
  const orders = [3, 5, 7].map((k) => ({ k, size: between(0, mostPercent) / 100, phase: between(-3, 3) }));
  const ratio = Math.hypot(...orders.map(({ size }) => size));
  return {
    wave: (t) => {
      const x = start + TURN * frequencyHz * t;
      return amplitude * orders.reduce((sum, o) => sum + o.size * Math.sin(o.k * x + o.phase), Math.sin(x));
    },
    frequencyHz,
    rms: (amplitude / Math.SQRT2) * Math.hypot(1, ratio),
    thdPercent: 100 * ratio,
    full: amplitude * (1 + ratio),
    cycles: between(2.4, 10),
    sampleRateHz: between(10e3, 40e3),
    written: 1,
    between: 'lines',
  };
}

/** A sine and a line of so many percent beside it. */
function withLine(own: Drawn, lineHz: number, percent: number, phase: number): Drawn {
  const amplitude = (percent / 100) * own.full;
  return {
    ...own,
    wave: (t) => own.wave(t) + amplitude * Math.sin(TURN * lineHz * t + phase),
    rms: Math.hypot(own.rms!, amplitude / Math.SQRT2),
    full: own.full + amplitude,
  };
}

/** Of a half cycle from 0 to 1: three levels, `duty` of it at the upper, edges of 0.6 % of the half. */
function modified(cycles: number, duty: number): number {
  const turn = cycles - Math.floor(cycles);
  const inside = duty / 2 - Math.abs(((2 * turn) % 1) - 0.5);
  return (turn < 0.5 ? 1 : -1) * Math.max(0, Math.min(1, inside / 0.006 + 0.5));
}

export const FAMILIES: Readonly<Record<string, (by: Draw) => Drawn>> = {
  'a clean sine of 3 cycles': (by) => ({ ...sine(by), cycles: 3 }),
  'a clean sine of 10 cycles': (by) => ({ ...sine(by), cycles: 10 }),
  'a line of 2 % close to the twentieth order': (by) => {
    const own = sine(by, 1);
    // Closer to an order than a cycle over the record a line is that order, as far as the record goes.
    return { ...withLine(own, by.between(990, 1015), 2, by.between(-3, 3)), thdPercent: null };
  },
  'a direct voltage that dies away': (by) => {
    const own = sine(by);
    const [size, timeS] = [by.between(0.03, 0.15) * by.pick([-1, 1]) * own.full, by.between(0.02, 0.1)];
    return { ...own, wave: (t) => own.wave(t) + size * Math.exp(-t / timeS), rms: null };
  },
  'a ripple folded down beside the fundamental': (by) => {
    const sampleRateHz = by.pick([20e3, 25e3, 40e3]);
    const own = { ...sine(by), sampleRateHz };
    return withLine(own, sampleRateHz + by.between(30, 90), by.between(0.5, 3), by.between(-3, 3));
  },
  'memory interpolated by lines': (by) => ({
    ...sine(by),
    sampleRateHz: by.pick([20e3, 40e3]),
    written: by.pick([2, 4]),
  }),
  'memory interpolated by a sinc': (by) => ({
    ...sine(by),
    sampleRateHz: by.pick([20e3, 50e3]),
    written: by.pick([2, 4]),
    between: 'sinc',
  }),
  'one transient that rings': (by) => {
    const own = { ...sine(by, 1), cycles: by.between(1.4, 8) };
    const [at, timeS] = [(by.between(0.1, 0.9) * own.cycles) / own.frequencyHz, by.between(0.0005, 0.003)];
    const [size, ringHz] = [by.between(0.05, 0.4) * own.full, by.between(200, 1000)];
    const ring = (t: number): number =>
      t < 0 ? 0 : size * Math.exp(-t / timeS) * Math.sin(TURN * ringHz * t);
    return { ...own, wave: (t) => own.wave(t) + ring(t - at), full: own.full + size };
  },
  'two cycles that differ': (by) => {
    const own = { ...sine(by, 1), cycles: by.between(1.6, 3) };
    const [order, size] = [by.pick([2, 4, 6]), by.between(0.02, 0.08) * own.full];
    const spanS = own.cycles / own.frequencyHz;
    // It grows from nothing: half of it is its mean, which adds to the distortion squared.
    const grown = (t: number): number => ((size * t) / spanS) * Math.sin(order * TURN * own.frequencyHz * t);
    const percent = (50 * size) / (Math.SQRT2 * own.rms!);
    return {
      ...own,
      wave: (t) => own.wave(t) + grown(t),
      rms: null,
      thdPercent: Math.hypot(own.thdPercent!, percent),
      full: own.full + size,
    };
  },
  'a modified sine that sags': (by) => {
    const [duty, amplitude, start] = [by.pick([0.5, 0.6, 0.7, 0.8]), by.between(150, 340), by.between(0, 1)];
    const own = sine(by);
    const [slope, spanS] = [by.between(-0.08, 0.08), own.cycles / own.frequencyHz];
    // The edges cut a sixth of their own width off the mean square: 0.002 of a half cycle.
    const rms = amplitude * Math.sqrt((duty - 0.002) * (1 + slope ** 2 / 12));
    return {
      ...own,
      wave: (t) => amplitude * (1 + slope * (t / spanS - 0.5)) * modified(start + own.frequencyHz * t, duty),
      rms,
      thdPercent: null,
      full: 1.05 * amplitude,
    };
  },
};

/** The wave through an instrument whose errors are drawn from within what is assumed of it. */
export function sampled(drawn: Drawn, by: Draw): Float64Array {
  const { wave, frequencyHz, full, cycles, sampleRateHz, written, between } = drawn;
  const assumed = ASSUMED_INSTRUMENT;
  const within = (halfWidth: number): number => by.between(-halfWidth, halfWidth);
  const gain = (1 + within(assumed.gainPercent / 100)) * (1 + within(assumed.probePercent / 100));
  const clock = 1 + within(assumed.timeBasePpm * 1e-6);
  const step = (2.5 * full) / 2 ** by.pick([8, 8, 10, 12]);
  const offset = within(0.018 * full);
  const noise = by.between(0.001, 0.006) * full;
  const own = [3, 5, 7].map((k) => ({
    k,
    size: (by.between(0, 0.9) * assumed.distortionPercent * full) / 100,
    phase: by.between(-3, 3),
  }));
  const code = (t: number): number => {
    const added = own.reduce((sum, o) => sum + o.size * Math.sin(o.k * TURN * frequencyHz * t + o.phase), 0);
    return step * Math.round((gain * (wave(t) + added) + offset + noise * by.normal()) / step);
  };
  const count = Math.round((cycles * sampleRateHz) / frequencyHz);
  if (written === 1) return Float64Array.from({ length: count }, (_, n) => code(n / sampleRateHz / clock));
  const margin = 20;
  const taken = Float64Array.from({ length: Math.ceil(count / written) + 2 * margin }, (_, i) =>
    code(((i - margin) * written) / sampleRateHz / clock),
  );
  return Float64Array.from({ length: count }, (_, n) => {
    const place = n / written + margin;
    const before = Math.floor(place);
    const share = place - before;
    if (between === 'lines') return taken[before]! + share * (taken[before + 1]! - taken[before]!);
    if (share === 0) return taken[before]!;
    let sum = 0;
    for (let j = before - 15; j <= before + 16; j++) {
      const x = place - j;
      // A sinc behind a Hann window of 17 samples each way.
      sum +=
        ((taken[j]! * Math.sin(Math.PI * x)) / (Math.PI * x)) * (0.5 + 0.5 * Math.cos((Math.PI * x) / 17));
    }
    return sum;
  });
}
