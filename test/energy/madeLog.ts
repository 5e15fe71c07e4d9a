import type { EnergyLog, LogColumn, LogMode } from '../../src/energy/log/energyLog.ts';

interface Made extends Partial<Omit<EnergyLog, 'volts' | 'amps' | 'watts' | 'modes' | 'timesS'>> {
  readonly timesS: ArrayLike<number>;
  readonly volts?: ArrayLike<number>;
  readonly amps?: ArrayLike<number>;
  readonly watts?: ArrayLike<number>;
  readonly modes?: readonly LogMode[];
  /** Smallest steps of the readings. */
  readonly steps?: { readonly volts?: number; readonly amps?: number; readonly watts?: number };
}

/** A log as it would have been read, from what a test wants to stand in it. */
export function madeLog({ timesS, volts, amps, watts, modes, steps = {}, ...rest }: Made): EnergyLog {
  const column = (name: string, values: ArrayLike<number> | undefined, step = 0): LogColumn | null =>
    values === undefined ? null : { name, values: Float64Array.from(values), step };
  return {
    rows: timesS.length,
    timesS: Float64Array.from(timesS),
    partStarts: [0],
    clock: { kind: 'elapsed', stepS: 0, startTime: null },
    sampling: 'instantaneous',
    volts: column('volts', volts, steps.volts),
    amps: column('amps', amps, steps.amps),
    watts: column('watts', watts, steps.watts),
    counters: [],
    modes: modes ?? null,
    positive: 'discharge',
    side: 'dc',
    totals: [],
    columns: [],
    layout: { rowsAre: 'wide', isNamed: true, delimiter: ',', clock: null, tests: 1, metric: null },
    notices: [],
    ...rest,
  };
}

/** Every so many seconds from 0 on, `end` within. */
export function everyS(stepS: number, endS: number): number[] {
  return Array.from({ length: Math.floor(endS / stepS + 1e-9) + 1 }, (_, i) => i * stepS);
}
