import { expect, test } from 'vitest';
import { logMeter } from '../../src/energy/doubt/logMeter.ts';
import { type LogFigure, runFigures, sumsOf } from '../../src/energy/doubt/runFigures.ts';
import type { EnergyLog } from '../../src/energy/log/energyLog.ts';
import { courseOf } from '../../src/energy/runs/course.ts';
import { runsOf } from '../../src/energy/runs/runs.ts';
import { contribution } from '../../src/measure/doubt/component.ts';
import type { Instrument } from '../../src/measure/doubt/instrument.ts';
import { everyS, madeLog } from './madeLog.ts';

function runsIn(log: EnergyLog, told: Partial<Instrument> = {}) {
  const course = courseOf(log)!;
  const meter = logMeter(course, told);
  const { runs, holes } = runsOf(course);
  const set = new Set(holes);
  return runs.map((run) => {
    const sums = sumsOf(course, run, set, meter);
    return { ...run, sums, figures: runFigures(sums) };
  });
}

function parts(figure: LogFigure): Readonly<Record<string, number>> {
  if (figure.value === null) throw new Error(JSON.stringify(figure.reason));
  return Object.fromEntries(
    figure.budget.components.map((component) => [component.source, contribution(component)]),
  );
}

// Worked examples of the definitions that this room follows, checked there with numpy; the second by Monte Carlo
// too. They are given to two digits behind the point, or as they stand here, and held to half of the last.
const exact = { powerGainPercent: 0, offsetW: 0, clockPpm: 0 };

test('irregular rows: trapezoid, and what may lie between rows', () => {
  const log = madeLog({ timesS: [0, 600, 2400, 3600], watts: [100, 120, 80, 80] });
  const [run, ...more] = runsIn(log, exact);
  expect(more).toEqual([]);
  expect(run!.kind).toBe('discharge');
  expect(run!.figures.energyWh.value).toBeCloseTo(95, 9);
  const { energy } = run!.sums;
  // Half-widths 1.667, 10 and 0 Wh: √Σ a² / √3 = 5.85 where each comes for itself, Σ a / √3 = 6.74 together.
  expect(energy!.betweenRows / Math.sqrt(3)).toBeCloseTo(5.85, 2);
  expect(energy!.betweenRowsTogether / Math.sqrt(3)).toBeCloseTo(6.74, 2);
  expect(energy!.sum - energy!.betweenRowsTogether).toBeCloseTo(83.33, 2);
  expect(energy!.sum + energy!.betweenRowsTogether).toBeCloseTo(106.67, 2);
  expect(run!.figures.durationS.value).toBe(3600);
});

test('means of the interval before the row, and values held from it', () => {
  const log = { timesS: [0, 600, 2400, 3600], watts: [100, 120, 80, 80] };
  const mean = runsIn(madeLog({ ...log, sampling: 'mean until the row' }), exact)[0]!;
  const held = runsIn(madeLog({ ...log, sampling: 'held from the row' }), exact)[0]!;
  expect(mean.figures.energyWh.value).toBeCloseTo(86.67, 2);
  expect(held.figures.energyWh.value).toBeCloseTo(103.33, 2);
});

test('a discharge at 100 W for five hours: gain, offset, step and clock are one value for all rows', () => {
  const timesS = everyS(10, 5 * 3600);
  const log = madeLog({ timesS, watts: timesS.map(() => 100), steps: { watts: 0.1 } });
  const { figures } = runsIn(log, { powerGainPercent: 0.5, offsetW: 0.05, clockPpm: 50 })[0]!;
  expect(figures.energyWh.value).toBeCloseTo(500, 9);
  const u = parts(figures.energyWh);
  expect(u['power gain']).toBeCloseTo(2.5 / Math.sqrt(3), 9);
  expect(u['power offset']).toBeCloseTo(0.144, 3);
  expect(u['resolution of the watts']).toBeCloseTo(0.144, 3);
  expect(u.clock).toBeCloseTo(0.014, 3);
  // Monte Carlo of the same parts: 1.46 Wh, and 95.45 % within ± 2.4 Wh; twice the deviation would be 2.9.
  expect(figures.energyWh).toMatchObject({
    budget: { combinedStandardUncertainty: expect.closeTo(1.458, 3) },
  });
  expect((figures.energyWh as { uncertainty: number }).uncertainty).toBeCloseTo(2.4, 1);
});

test('a step that the readings wander over counts row by row', () => {
  const timesS = everyS(10, 5 * 3600);
  // Over several steps, from row to row another.
  const watts = timesS.map((_, i) => 100 + 0.1 * ((i * 7) % 11));
  const { figures } = runsIn(madeLog({ timesS, watts, steps: { watts: 0.1 } }), exact)[0]!;
  expect(parts(figures.energyWh)['resolution of the watts']).toBeCloseTo(0.0034, 4);
});

test('a supply that climbs to 50 W in 8 s and is off for 4 s cycles every 12 s', () => {
  const timesS = everyS(1, 3600);
  const watts = timesS.map((t) => (t % 12 <= 8 ? (50 * (t % 12)) / 8 : 0));
  const [run, ...more] = runsIn(madeLog({ timesS, watts }), exact);
  expect(run!.kind).toBe('cycling');
  // What is left of the hour before the first rise and behind the last fall.
  expect(more.filter(({ kind }) => kind !== 'off')).toEqual([]);
  const cycles = run!.rises!.length - 1;
  expect(cycles).toBeGreaterThan(295);
  const { energyWh } = run!.figures;
  // 200 J a cycle in truth; the trapezoid has 225 J, within ± 25 J a fall, all of them on one side.
  const perCycle = (3600 * energyWh.value!) / (cycles + 1);
  expect(perCycle).toBeGreaterThan(224);
  expect(perCycle).toBeLessThan(226);
  expect(Math.abs(perCycle - 200)).toBeLessThanOrEqual(
    (3600 * (energyWh as { uncertainty: number }).uncertainty) / cycles,
  );
});
