import { describe, expect, test } from 'vitest';
import { assayLog } from '../../src/energy/energyAssay.ts';
import type { EnergyLog, LogCounter } from '../../src/energy/log/energyLog.ts';
import type { LogTold } from '../../src/energy/logAssay.ts';
import { randomNumbers } from '../../src/signal/randomNumbers.ts';
import { draws } from '../samples.ts';
import { everyS, madeLog } from './madeLog.ts';
import { near } from './near.ts';

const source = { file: 'a.csv', sha256: '0'.repeat(64) };
const assay = (log: EnergyLog, told: LogTold = {}) => assayLog(log, source, told).result;

function counter(values: readonly number[], more: Partial<LogCounter> = {}): LogCounter {
  return {
    name: 'Wh',
    quantity: 'energy',
    kind: 'cumulative',
    step: 0.001,
    values: Float64Array.from(values),
    ...more,
  };
}

describe('a load that comes and goes', () => {
  test('pulses in closed form: period, time on, energy and what is lost', () => {
    const random = randomNumbers(81);
    for (let n = 0; n < draws(200, 30); n++) {
      const between = (low: number, high: number): number => low + (high - low) * random();
      const periodS = between(20, 300);
      const duty = between(0.25, 0.75);
      const level = between(20, 500);
      const cycles = Math.floor(between(5, 40));
      const rasterS = periodS / between(14, 60);
      const startS = between(60, 200);
      const endS = startS + cycles * periodS;
      const timesS = everyS(rasterS, endS + 120);
      const isOn = (t: number): boolean => t >= startS && t < endS && ((t - startS) / periodS) % 1 < duty;
      const { runs } = assay(madeLog({ timesS, watts: timesS.map((t) => (isOn(t) ? level : 0)) }));
      const [run, ...more] = runs.filter(({ kind }) => kind !== 'off');
      expect(run!.kind, `log ${n}`).toBe('cycling');
      expect(more, `log ${n}`).toEqual([]);
      const { periodS: found, onPercent, lostWh } = run!.cycle!;
      expect(Math.abs(found.value! - periodS)).toBeLessThanOrEqual(rasterS);
      // Two edges a cycle, each known to a row.
      expect(Math.abs(onPercent.value! - 100 * duty)).toBeLessThanOrEqual((100 * rasterS) / periodS);
      const truth = (level * duty * periodS * cycles) / 3600;
      expect(Math.abs(run!.energyWh.value! - truth)).toBeLessThanOrEqual((level * rasterS * cycles) / 3600);
      // From the first rise to the last fall, at the level it would hold.
      const lost = (level * ((cycles - 1) * periodS * (1 - duty))) / 3600;
      expect(Math.abs(lostWh.value! - lost)).toBeLessThanOrEqual((level * rasterS * (cycles + 2)) / 3600);
    }
  });

  test('two discharges, or several of unlike length, are discharges', () => {
    const timesS = everyS(10, 20_000);
    const on = (t: number): boolean =>
      (t > 600 && t < 1800) || (t > 2400 && t < 6000) || (t > 9000 && t < 9600) || (t > 15_000 && t < 19_000);
    const { runs } = assay(madeLog({ timesS, watts: timesS.map((t) => (on(t) ? 100 : 0)) }));
    expect(runs.map(({ kind }) => kind).filter((kind) => kind !== 'off')).toEqual(Array(4).fill('discharge'));
  });

  test('a pause of two rows splits nothing, one of three does', () => {
    const kinds = (pause: number): string[] => {
      const watts = [...Array(20).fill(100), ...Array(pause).fill(0), ...Array(20).fill(100)];
      return assay(madeLog({ timesS: everyS(10, 10 * (watts.length - 1)), watts })).runs.map(
        ({ kind }) => kind,
      );
    };
    expect(kinds(2)).toEqual(['discharge']);
    expect(kinds(3)).toEqual(['discharge', 'off', 'discharge']);
  });
});

describe('idle', () => {
  // 200 W for an hour, 8 W for two hours with nothing on the outlet, then off.
  const timesS = everyS(10, 12_000);
  const watts = timesS.map((t) => (t < 3600 ? 200 : t < 10_800 ? 8 : 0));
  const { runs } = assay(madeLog({ timesS, watts }), { ratedWh: 400 });
  const idle = runs.find(({ kind }) => kind === 'idle')!;

  test('is what a unit takes for itself, how long it lasts so, and when it switches itself off', () => {
    expect(runs.map(({ kind }) => kind)).toEqual(['discharge', 'idle', 'off']);
    expect(idle.idle!.powerW.value).toBeCloseTo(8, 9);
    expect(idle.idle!.emptiesInH.value).toBeCloseTo(50, 9);
    expect(idle.idle!.autoOffAfterS.value).toBeCloseTo(7190, 9);
  });

  test('is no slow end of a charge', () => {
    const taper = timesS.map((t) => (t < 3600 ? -200 : t < 11_000 ? -200 * Math.exp(-(t - 3600) / 1800) : 0));
    const charge = assay(madeLog({ timesS, watts: taper })).runs;
    expect(charge.map(({ kind }) => kind)).toEqual(['charge', 'off']);
  });

  test('alone in a log is told by its rating: over twenty hours to empty are no discharge', () => {
    const alone = madeLog({ timesS, watts: timesS.map(() => 8) });
    expect(assay(alone, { ratedWh: 400 }).runs.map(({ kind }) => kind)).toEqual(['idle']);
    expect(assay(alone).runs.map(({ kind }) => kind)).toEqual(['discharge']);
  });
});

describe('a counter', () => {
  const random = randomNumbers(82);
  // Rows every 5.35 s or so.
  const timesS: number[] = [];
  for (let t = 0; t < 7200; t += 4.5 + 1.7 * random()) timesS.push(t);
  const watts = timesS.map((t) => 90 + 20 * Math.sin(t / 500));
  const sums = (secondsOf: (row: number) => number): number[] => {
    let sum = 0;
    return watts.map((power, row) => {
      sum += row === 0 ? 0 : (power * secondsOf(row)) / 3600;
      return sum;
    });
  };

  test('that integrates agrees', () => {
    const right = sums((row) => timesS[row]! - timesS[row - 1]!);
    const { counters, notices } = assay(madeLog({ timesS, watts, counters: [counter(right)] }));
    // It holds each power for the time before it, ours the mean of both ends: ½ · 5.35 s of at most 40 W, of 180 Wh.
    near(counters[0]!.ratioPercent, 100, 0.05);
    expect(notices.map(({ code }) => code)).not.toContain('counter.fixedStep');
  });

  test('that takes each row for five seconds is named, with its seconds', () => {
    const { counters, notices } = assay(madeLog({ timesS, watts, counters: [counter(sums(() => 5))] }));
    const share = (100 * 5) / (7200 / timesS.length);
    // Steps of 5.35 ± 0.49 s fall on a power that varies by 16 %: 0.04 % over 1,340 rows; five times that.
    near(counters[0]!.ratioPercent, share, 0.2);
    expect(notices).toContainEqual(
      expect.objectContaining({ code: 'counter.fixedStep', seconds: expect.closeTo(5, 1) }),
    );
  });

  test('alone in a log is where its energy comes from; a reset is no loss', () => {
    // 50 W for two hours, reset after one; 0.01 Wh a step.
    const times = everyS(60, 7200);
    const values = times.map((t) => Math.round(100 * ((50 * (t <= 3600 ? t : t - 3660)) / 3600)) / 100);
    const { runs } = assay(madeLog({ timesS: times, counters: [counter(values, { step: 0.01 })] }));
    const total = runs.reduce((sum, { energyWh }) => sum + (energyWh.value ?? 0), 0);
    // In the minute of the reset nothing was counted.
    // Each of two runs begins and ends on a reading that is rounded by half a step of 0.01 Wh at most.
    expect(Math.abs(total - (50 + (50 * 59) / 60))).toBeLessThanOrEqual(0.02);
  });

  // A step of 0.01 Wh: a difference of two readings is off by q/√6 = 0.0041 Wh.
  test('a gauge tells both ways, and its step is felt once a run', () => {
    const times = everyS(60, 7200);
    const values = times.map(
      (t) =>
        40 - Math.round(100 * ((10 * Math.min(t, 3600)) / 3600 - Math.max(0, (8 * (t - 3600)) / 3600))) / 100,
    );
    const { runs } = assay(
      madeLog({
        ...{ timesS: times, positive: 'unsigned' },
        counters: [counter(values, { step: 0.01, kind: 'remaining' })],
        modes: times.map((t) => (t <= 3600 ? 'discharge' : 'charge')),
      }),
    );
    expect(runs.map(({ kind }) => kind)).toEqual(['discharge', 'charge']);
    expect(runs.map(({ energyWh }) => energyWh.value!.toFixed(2))).toEqual(['10.00', '8.00']);
    const { energyWh } = runs[0]!;
    const step =
      energyWh.value === null ? undefined : energyWh.budget.components.find(({ unit }) => unit === 'Wh');
    expect(step!.standardUncertainty).toBeCloseTo(0.01 / Math.sqrt(6), 12);
  });

  test('a total in the head is held against ours', () => {
    const log = madeLog({ timesS, watts, totals: [{ quantity: 'energy', value: 300, place: 'foot' }] });
    const { counters, notices } = assay(log);
    expect(counters[0]!.ratioPercent.value).toBeGreaterThan(140);
    expect(notices.map(({ code }) => code)).toContain('total.differs');
  });
});

test('volts times amperes of AC is no energy, and the reason is given', () => {
  const timesS = everyS(10, 3600);
  const { runs } = assay(
    madeLog({ timesS, volts: timesS.map(() => 120), amps: timesS.map(() => 2), side: 'ac' }),
    { ratedWh: 100 },
  );
  expect(runs[0]!.energyWh).toMatchObject({ value: null, reason: expect.stringContaining('apparent') });
  expect(runs[0]!.startVoltageV.value).toBeNull();
  expect(runs[0]!.durationS.value).toBe(3600);
});
