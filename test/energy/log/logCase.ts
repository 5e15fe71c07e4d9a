import { expect, test } from 'vitest';
import type { EnergyLog, LogQuantity } from '../../../src/energy/log/energyLog.ts';
import { type EnergyLogOptions, readEnergyLog } from '../../../src/energy/log/readEnergyLog.ts';

/** What a log written by the test must read as. */
export interface LogCase {
  /** The trap, in words. */
  readonly title: string;
  readonly file: string;
  readonly options?: EnergyLogOptions;
  /** Seconds since the first row, one a row. */
  readonly timesS: readonly number[];
  readonly volts?: readonly number[];
  readonly amps?: readonly number[];
  readonly watts?: readonly number[];
  /** Absent: whatever is read. */
  readonly counters?: readonly (readonly [quantity: string, kind: string, last: number])[];
  readonly columns?: readonly (readonly [name: string, quantity: LogQuantity, unit: string])[];
  readonly also?: Partial<
    Pick<EnergyLog, 'sampling' | 'positive' | 'side' | 'partStarts' | 'totals' | 'modes'>
  >;
  readonly clock?: Partial<EnergyLog['clock']>;
  readonly written?: string;
  /** Codes, in order. */
  readonly notices?: readonly string[];
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export const lines = (...all: readonly (string | readonly string[])[]): string =>
  `${all.flat().join('\n')}\n`;

/** One test a case: everything a later room trusts. */
export function testLogs(cases: readonly LogCase[]): void {
  for (const one of cases) {
    test(one.title, () => {
      const log = readEnergyLog(bytesOf(one.file), one.options ?? {});
      expect(log.rows).toBe(one.timesS.length);
      // Times are sums of a few numbers of up to 10⁹ with ten digits: a microsecond is far above their rounding.
      expectSeries(log.timesS, one.timesS, 1e-6);
      for (const key of ['volts', 'amps', 'watts'] as const) {
        const expected = one[key];
        if (expected === undefined) expect(log[key], key).toBeNull();
        else expectSeries(log[key]!.values, expected, 1e-9);
      }
      if (one.counters !== undefined) {
        expect(log.counters.map(({ quantity, kind }) => [quantity, kind])).toEqual(
          one.counters.map(([quantity, kind]) => [quantity, kind]),
        );
        one.counters.forEach(([, , last], k) => {
          expect(log.counters[k]!.values.at(-1)).toBeCloseTo(last, 9);
        });
      }
      if (one.columns !== undefined)
        expect(log.columns.map(({ name, quantity, unit }) => [name, quantity, unit])).toEqual(one.columns);
      expect(log).toMatchObject({ ...one.also, ...(one.clock === undefined ? {} : { clock: one.clock }) });
      if (one.written !== undefined) expect(log.layout.clock?.written).toBe(one.written);
      expect(log.notices.map(({ code }) => code)).toEqual(one.notices ?? []);
    });
  }
}

function expectSeries(values: Float64Array, expected: readonly number[], within: number): void {
  expect(values.length).toBe(expected.length);
  expected.forEach((value, row) => {
    if (Number.isNaN(value)) expect(values[row]).toBeNaN();
    else expect(Math.abs(values[row]! - value), `row ${row}: ${values[row]}`).toBeLessThanOrEqual(within);
  });
}
