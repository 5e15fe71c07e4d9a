import type { Capture } from '../../../src/read/capture.ts';

/** A generator of its own for records on which something happens: closed forms, nothing of the project's own waves. */

/** Numbers in [0, 1), the same for the same seed (mulberry32, public domain). */
export function drawn(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Value of a wave of peak 1 at a phase in cycles. */
export type Shape = (phase: number) => number;

const fraction = (x: number): number => x - Math.floor(x);

/** Shapes as outlets give them, with random proportions. */
export const SHAPES: Record<string, (random: () => number) => Shape> = {
  sine: () => (p) => Math.sin(2 * Math.PI * p),
  grid: () => (p) =>
    Math.sin(2 * Math.PI * p) + 0.04 * Math.sin(6 * Math.PI * p + 1) + 0.03 * Math.sin(10 * Math.PI * p),
  modified: (random) => {
    const duty = 0.45 + 0.45 * random();
    const edge = 0.004 + 0.012 * random();
    return (p) => {
      const q = fraction(2 * p);
      const top = Math.min(1, Math.max(0, (q - (1 - duty) / 2) / edge));
      const end = Math.min(1, Math.max(0, ((1 + duty) / 2 - q) / edge));
      return (fraction(p) < 0.5 ? 1 : -1) * Math.min(top, end);
    };
  },
  square: (random) => {
    const edge = 0.002 + 0.006 * random();
    return (p) => {
      const q = fraction(p);
      return (q < 0.5 ? 1 : -1) * Math.min(1, Math.min(q, Math.abs(q - 0.5), 1 - q) / edge);
    };
  },
  halfWave: () => (p) => Math.max(0, Math.sin(2 * Math.PI * p)),
  phaseCut: (random) => {
    const cut = 0.1 + 0.3 * random();
    return (p) => (fraction(2 * p) > cut ? Math.sin(2 * Math.PI * p) : 0);
  },
};

export interface Drawing {
  readonly shape: Shape;
  readonly frequencyHz: number;
  readonly cycles: number;
  /** Factor on the wave at a time in cycles. */
  readonly size: (cycle: number) => number;
  /** Phase ahead of the first wave's at a time in cycles, in cycles. */
  readonly ahead?: (cycle: number) => number;
  /** Conductance of the load at a time in cycles, A/V; absent: no current channel. */
  readonly load?: (cycle: number) => number;
}

/** How the scope sees a drawing, at random: 60 to 900 samples a cycle, 8 to 12 bits, noise to 1 %, any phase. */
export function captureOf(drawing: Drawing, random: () => number): Capture {
  const { shape, frequencyHz, cycles, size, ahead = () => 0, load } = drawing;
  const samplesACycle = Math.round(60 * 2 ** (3.9 * random()));
  const phase = random();
  const noise = 0.01 * random() ** 2;
  const peakV = (frequencyHz > 55 ? 120 : 230) * Math.SQRT2;
  const gaussian = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const times = Float64Array.from(
    { length: Math.round(cycles * samplesACycle) },
    (_, n) => n / samplesACycle,
  );
  const clean = times.map((t) => size(t) * peakV * shape(phase + t + ahead(t)));
  const volts = rounded(
    clean.map((v) => v + noise * peakV * gaussian()),
    8 + Math.floor(5 * random()),
    peakV * (1.2 + 0.4 * random()),
  );
  const channel = (name: string, quantity: 'voltage' | 'current', unit: string, samples: Float64Array) =>
    ({ name, quantity, unit, scale: 1, samples, gaps: [], stepSize: null }) as const;
  const amperes = load === undefined ? null : times.map((t, n) => load(t) * clean[n]!);
  const most = amperes?.reduce((a, b) => Math.max(a, Math.abs(b)), 0.01) ?? 0;
  return {
    channels: [
      channel('CH1', 'voltage', 'V', volts),
      ...(amperes === null
        ? []
        : [
            channel(
              'CH2',
              'current',
              'A',
              rounded(
                amperes.map((a) => a + 0.003 * most * gaussian()),
                8,
                1.3 * most,
              ),
            ),
          ]),
    ],
    sampleCount: times.length,
    startS: 0,
    intervalS: 1 / (frequencyHz * samplesACycle),
    layout: 'drawn',
    notices: [],
  };
}

function rounded(samples: Float64Array, bits: number, fullScale: number): Float64Array {
  const step = (2 * fullScale) / 2 ** bits;
  return samples.map((v) => Math.max(-fullScale, Math.min(fullScale - step, step * Math.round(v / step))));
}
