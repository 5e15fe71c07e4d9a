import { expect, test } from 'vitest';
import type { Figure } from '../../../src/base/figure.ts';
import type { SupplyEvent } from '../../../src/measure/breaks/supplyEvent.ts';
import { type SupplyCourse, supplyTimeline } from '../../../src/measure/steps/supplyTimeline.ts';
import { waveOfRms } from '../../../src/synth/changedWaves.ts';
import { course, type Evolution, evolvingWave } from '../../../src/synth/evolvingWave.ts';
import { sineWave } from '../../../src/synth/sines.ts';
import { EIGHT_BITS, recorded } from '../recorded.ts';

const RATE = 20_000;

/** A 230 V sine at 50 Hz, and the current that a conductance draws from it at each instant; A/V. */
function courseOf(
  evolution: Omit<Evolution, 'wave' | 'frequencyHz'>,
  siemens: (timeS: number) => number,
  durationS = 0.8,
  clipsAtA = Number.POSITIVE_INFINITY,
): SupplyCourse {
  const wave = evolvingWave({ wave: waveOfRms(sineWave(), 230), frequencyHz: 50, ...evolution });
  const record = recorded(wave, { sampleRateHz: RATE, durationS, ...EIGHT_BITS });
  const current = record.samples.map((_, n) => {
    const amperes = siemens(n / RATE) * wave.at(n / RATE);
    return Math.max(-clipsAtA, Math.min(clipsAtA, 0.01 * Math.round(100 * amperes)));
  });
  return supplyTimeline(record, { nominal: 230, current })!;
}

function only<K extends SupplyEvent['kind']>(
  events: readonly SupplyEvent[],
  kind: K,
): Extract<SupplyEvent, { kind: K }> {
  const found = events.filter((event) => event.kind === kind);
  if (found.length !== 1) throw new Error(`not one ${kind}: ${events.map((event) => event.kind).join(', ')}`);
  return found[0] as Extract<SupplyEvent, { kind: K }>;
}

const numberOf = (figure: Figure | undefined): number => {
  if (figure === undefined || figure.value === null) throw new Error('no figure');
  return figure.value;
};

/** 1500 W at 230 V. */
const HEAVY = 1500 / 230 ** 2;
const HALF_CYCLE_S = 0.01;

test('output lost 0.14 s after 1500 W came on: the step, the loss, its load and how long that was held', () => {
  const { steps, events } = courseOf(
    { amplitude: course(1, [{ atS: 0.303, to: 0.97 }]), breaks: [{ fromS: 0.443, toS: 9 }] },
    (t) => (t < 0.303 ? 0.1 * HEAVY : HEAVY),
  );
  expect(steps.map(({ direction }) => direction)).toEqual(['on']);
  expect(Math.abs(steps[0]!.atS.value - 0.303)).toBeLessThan(HALF_CYCLE_S);
  const lost = only(events, 'cut-off');
  expect(Math.abs(lost.startS.value - 0.443)).toBeLessThan(0.0005);
  // The new load on the voltage that it pulls down; current to 10 mA, whole cycles.
  expect(Math.abs(lost.loadW! / (1500 * 0.97 ** 2) - 1)).toBeLessThan(0.01);
  expect(lost.heldAtLeast).toBe(false);
  expect(Math.abs(numberOf(lost.heldS) - 0.14)).toBeLessThan(HALF_CYCLE_S);
});

test('output lost after the load went off: no load, and held since then', () => {
  const { events } = courseOf(
    {
      amplitude: course(1, [
        { atS: 0.2, to: 0.95 },
        { atS: 0.35, to: 1 },
      ]),
      breaks: [{ fromS: 0.5, toS: 9 }],
    },
    // What a clamp's zero is off by, 0.7 W.
    (t) => (t > 0.2 && t < 0.35 ? HEAVY : 0.7 / 230 ** 2),
  );
  const lost = only(events, 'cut-off');
  expect([lost.loadW, lost.isAfterLess, lost.heldAtLeast]).toEqual([0, true, false]);
  expect(Math.abs(numberOf(lost.heldS) - 0.15)).toBeLessThan(HALF_CYCLE_S);
});

test('a load that was on when the record began was held at least that long', () => {
  const { events } = courseOf({ breaks: [{ fromS: 0.443, toS: 9 }] }, () => HEAVY);
  const lost = only(events, 'cut-off');
  expect(lost.heldAtLeast).toBe(true);
  expect(Math.abs(numberOf(lost.heldS) - 0.443)).toBeLessThan(0.0005);
  expect(Math.abs(lost.loadW! / 1500 - 1)).toBeLessThan(0.01);
});

test('low voltage under a load: its times, its lowest value and the load that pulls it down; no step', () => {
  const { steps, events } = courseOf(
    {
      amplitude: course(1, [
        { atS: 0.3, to: 0.6 },
        { atS: 0.5, to: 1 },
      ]),
    },
    (t) => (t < 0.3 || t > 0.5 ? 0.1 * HEAVY : 3 * HEAVY),
  );
  expect(steps).toEqual([]);
  const low = only(events, 'brown-out');
  expect(Math.abs(low.startS.value - 0.3)).toBeLessThan(HALF_CYCLE_S);
  expect(Math.abs(numberOf(low.endS) - 0.5)).toBeLessThan(HALF_CYCLE_S);
  expect(Math.abs(low.durationS.value - 0.2)).toBeLessThan(HALF_CYCLE_S);
  // Noise of 0.4 % over 400 samples a cycle, and some of the 8 bits.
  expect(Math.abs(low.before.value / 230 - 1)).toBeLessThan(0.002);
  expect(Math.abs(low.lowest.value / (0.6 * 230) - 1)).toBeLessThan(0.004);
  expect(Math.abs(low.loadW! / (4500 * 0.36) - 1)).toBeLessThan(0.01);
});

test('a record that ends in low voltage: no end, and a time that it lasts at least', () => {
  const { events } = courseOf({ amplitude: course(1, [{ atS: 0.3, to: 0.5 }]) }, () => HEAVY, 0.6);
  const low = only(events, 'brown-out');
  expect(low.endS.value).toBe(null);
  // The last whole cycle ends up to a half before the record does.
  expect(low.durationS.value).toBeGreaterThan(0.3 - 2 * HALF_CYCLE_S);
  expect(low.durationS.value).toBeLessThan(0.3 + HALF_CYCLE_S);
});

test('inrush: its peak, when, and the half cycles after it', () => {
  // On at a zero; sixfold at first, back to the load with a time constant of two cycles.
  const siemens = (t: number): number => (t < 0.3 ? 0 : HEAVY * (1 + 5 * Math.exp(-(t - 0.3) / 0.04)));
  const inrush = only(courseOf({}, siemens).events, 'inrush');
  const at = (t: number): number => siemens(t) * 230 * Math.SQRT2 * Math.abs(Math.sin(2 * Math.PI * 50 * t));
  const grid = Array.from({ length: 2000 }, (_, i) => 0.3 + i * 1e-5);
  const peakS = grid.reduce((a, b) => (at(b) > at(a) ? b : a));
  expect(Math.abs(inrush.atS.value - peakS)).toBeLessThan(0.0005);
  // Rounded to 10 mA, twenty thousand samples a second.
  expect(Math.abs(numberOf(inrush.peakA) / at(peakS) - 1)).toBeLessThan(0.005);
  expect(inrush.clipped).toBe(false);
  const halfCycle = (k: number): number => {
    let sum = 0;
    for (let i = 0; i < 1000; i++) sum += at(0.3 + 0.01 * (k + (i + 0.5) / 1000)) ** 2;
    return Math.sqrt(sum / 1000);
  };
  // The zero is told to a tenth of a millisecond or so.
  [0, 1, 2, 5].forEach((k) => {
    expect(Math.abs(inrush.halfCycleA[k]! / halfCycle(k) - 1)).toBeLessThan(0.02);
  });
});

test('an inrush that leaves the range is at least its peak; a plain load and a noisy clamp have none', () => {
  const siemens = (t: number): number => (t < 0.3 ? 0 : HEAVY * (1 + 5 * Math.exp(-(t - 0.3) / 0.04)));
  const clipped = only(courseOf({}, siemens, 0.8, 20).events, 'inrush');
  expect([clipped.clipped, clipped.peakA.value]).toEqual([true, 20]);
  expect(courseOf({}, (t) => (t < 0.3 ? 0 : HEAVY)).events).toEqual([]);
  const noisy = courseOf({}, (t) => 1e-5 * Math.sin(1e7 * t * t));
  expect([noisy.events, noisy.steps]).toEqual([[], []]);
});

test('bursts into a load are no search for one', () => {
  const breaks = [0, 1, 2, 3].map((i) => ({ fromS: 0.2 * i + 0.06, toS: 0.2 * i + 0.2 }));
  expect(courseOf({ breaks }, () => 1e-5).events.map(({ kind }) => kind)).toEqual(['idle bursts']);
  const hiccup = only(courseOf({ breaks }, () => HEAVY).events, 'hiccup');
  expect(hiccup.count).toBe(4);
  expect(Math.abs(numberOf(hiccup.periodS) - 0.2)).toBeLessThan(0.001);
  expect(Math.abs(numberOf(hiccup.onS) - 0.06)).toBeLessThan(0.001);
});

test('low voltage under a load that was on: its current falls with it, and it was held since it came on', () => {
  const amplitude = course(1, [
    { atS: 0.4, to: 0.51 },
    { atS: 0.7, to: 1 },
  ]);
  const { steps, events } = courseOf({ amplitude }, (t) => (t < 0.26 ? 0 : HEAVY), 1);
  expect(steps.map(({ atS }) => atS.value).filter((atS) => atS > 0.35)).toEqual([]);
  const low = only(events, 'brown-out');
  expect(Math.abs(low.loadW! / 1500 - 1)).toBeLessThan(0.01);
  expect(low.heldAtLeast).toBe(false);
  expect(Math.abs(numberOf(low.heldS) - 0.14)).toBeLessThan(HALF_CYCLE_S);
});
