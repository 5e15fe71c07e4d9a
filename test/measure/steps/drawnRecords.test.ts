import { expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import type { AssayResult } from '../../../src/assay/measureDocument.ts';
import { draws } from '../../samples.ts';
import { captureOf, type Drawing, drawn, SHAPES } from './drawnRecords.ts';

interface Told {
  readonly drawing: Omit<Drawing, 'shape' | 'frequencyHz'>;
  /** Kinds of the events, and where each starts, in cycles; null: anywhere. */
  readonly events: readonly (readonly [kind: string, startCycle: number | null])[];
  /** Sizes from one to the next, at a time in cycles; absent: not looked at. */
  readonly steps?: readonly (readonly [atCycle: number, from: number, to: number])[];
}

const between = (random: () => number, low: number, high: number): number => low + (high - low) * random();

/** What happens, at random places. */
const FAMILIES: Record<string, (random: () => number) => Told> = {
  'nothing, under three cycles': (random) => ({
    drawing: { cycles: between(random, 1.6, 3), size: () => 1 },
    events: [],
    steps: [],
  }),
  'nothing, and a current of noise': (random) => ({
    drawing: { cycles: between(random, 4, 20), size: () => 1, load: () => 0 },
    events: [],
    steps: [],
  }),
  'a start after up to 70 % of nothing': (random) => {
    const cycles = between(random, 10, 30);
    const at = between(random, 1.2, 0.7 * cycles);
    return { drawing: { cycles, size: (t) => (t < at ? 0 : 1) }, events: [['start-up', at]], steps: [] };
  },
  'a cut-off': (random) => {
    const cycles = between(random, 10, 30);
    const at = between(random, 0.3 * cycles, cycles - 1.2);
    return { drawing: { cycles, size: (t) => (t < at ? 1 : 0) }, events: [['cut-off', at]], steps: [] };
  },
  bursts: (random) => {
    const on = between(random, 2.5, 5);
    const every = on + between(random, on + 0.5, 20);
    const lead = between(random, 0, every - on);
    const size = (t: number): number => (t >= lead && (t - lead) % every < on ? 1 : 0);
    return { drawing: { cycles: lead + 4 * every, size }, events: [['idle bursts', lead]], steps: [] };
  },
  hiccup: (random) => {
    const [on, off] = [between(random, 1.5, 5), between(random, 3, 12)];
    const at = on + between(random, 3, 6);
    const size = (t: number): number => (t < at || (t - at) % (on + off) >= off ? 1 : 0);
    return { drawing: { cycles: at + 3 * (on + off) + off, size }, events: [['hiccup', at]], steps: [] };
  },
  'a failed start': (random) => {
    const at = between(random, 1.5, 6);
    const until = at + between(random, 2, 2.9);
    const size = (t: number): number => (t >= at && t < until ? 1 : 0);
    return {
      drawing: { cycles: until + between(random, 3.2, 8), size },
      events: [['failed start', at]],
      steps: [],
    };
  },
  'a brown-out': (random) => {
    const [at, low] = [between(random, 4, 10), between(random, 0.15, 0.8)];
    const until = random() < 0.5 ? Number.POSITIVE_INFINITY : at + between(random, 4, 15);
    const size = (t: number): number => (t >= at && t < until ? low : 1);
    return { drawing: { cycles: at + 24, size }, events: [['brown-out', at]], steps: [] };
  },
  'a load step': (random) => {
    const [at, to] = [between(random, 4, 15), 1 - between(random, 0.02, 0.1)];
    return {
      drawing: { cycles: at + between(random, 4, 15), size: (t) => (t < at ? 1 : to) },
      events: [],
      steps: [[at, 1, to]],
    };
  },
  'a load, held for some cycles, then nothing': (random) => {
    const on = between(random, 4, 10);
    const at = on + between(random, 2.5, 9);
    return {
      drawing: {
        cycles: at + between(random, 3, 8),
        size: (t) => (t < on ? 1 : t < at ? 0.97 : 0),
        load: (t) => (t < on ? 0.001 : 0.02),
      },
      events: [['cut-off', at]],
      steps: [[on, 1, 0.97]],
    };
  },
};

/** A few pulses to one side of zero, and nothing else, are no supply that comes and goes. */
const ALTERNATING = Object.entries(SHAPES).flatMap(([name, shape]) => (name === 'halfWave' ? [] : [shape]));
const COMES_AND_GOES = ['start', 'cut-off', 'bursts', 'hiccup'];

/** Of a cycle: what a rest at zero of the wave's own may hide of an event, and of a step in its cycle. */
const HIDDEN = 0.55;

test.each(Object.entries(FAMILIES))('%s: found, and nothing else', (name, draw) => {
  const random = drawn(2026);
  const isAlternating = COMES_AND_GOES.some((word) => name.includes(word));
  const shapes = isAlternating ? ALTERNATING : Object.values(SHAPES);
  for (let run = 0; run < draws(12, 2); run++) {
    const shape = shapes[run % shapes.length]!(random);
    const frequencyHz = (random() < 0.5 ? 50 : 60) * (1 + 0.004 * (random() - 0.5));
    const { drawing, events, steps } = draw(random);
    const [assay] = assayCapture(captureOf({ ...drawing, shape, frequencyHz }, random), {
      file: 'drawn.csv',
      sha256: '',
    });
    const { result } = assay!;
    expect(result.events.map(({ kind }) => kind)).toEqual(events.map(([kind]) => kind));
    events.forEach(([, cycle], i) => {
      if (cycle === null) return;
      expect(Math.abs(startOf(result, i) * frequencyHz - cycle)).toBeLessThan(HIDDEN);
    });
    if (steps === undefined) continue;
    expect(result.steps.length).toBe(steps.length);
    const rms = Math.sqrt(mean((i) => shape(i) ** 2)) * (frequencyHz > 55 ? 120 : 230) * Math.SQRT2;
    steps.forEach(([at, from, to], i) => {
      const step = result.steps[i]!;
      expect(Math.abs(step.atS.value * frequencyHz - at)).toBeLessThan(HIDDEN + 0.1);
      // Edges of a stepped wave fall between 60 samples a cycle: a sixtieth of its power each half cycle.
      expect(Math.abs(step.beforeV.value / (from * rms) - 1)).toBeLessThan(0.015);
      expect(Math.abs(step.afterV.value / (to * rms) - 1)).toBeLessThan(0.015);
    });
  }
});

function startOf({ events }: AssayResult, i: number): number {
  const event = events[i]!;
  return (event.kind === 'inrush' ? event.atS : event.startS).value;
}

/** Over one cycle. */
function mean(at: (phase: number) => number): number {
  let sum = 0;
  for (let i = 0; i < 4096; i++) sum += at((i + 0.5) / 4096);
  return sum / 4096;
}
