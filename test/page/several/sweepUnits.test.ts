import { describe, expect, test } from 'vitest';
import { captureEvidence } from '../../../src/index.ts';
import { parseClaim } from '../../../src/judge/claims/parseClaim.ts';
import type { Entry } from '../../../src/page/desk/sitting.ts';
import { sweepUnits } from '../../../src/page/several/sweepUnits.ts';
import { nothingTold } from '../../../src/page/told/told.ts';
import { assays } from '../../fixtures/assays.ts';

const assay = assays.goodSine!();

interface ToldOfIt {
  readonly label?: string;
  readonly claims?: readonly string[];
  readonly power?: boolean;
  readonly changes?: Partial<Pick<typeof assay.result, 'steps' | 'events' | 'nominal' | 'waveform'>>;
}

/** A capture on the page that was measured with a label, a load and claims. */
function entry(
  id: number,
  load: string | undefined,
  { label, claims = [], power, changes = {} }: ToldOfIt = {},
): Entry {
  const options = {
    claims: claims.map(parseClaim),
    ...(label === undefined ? {} : { label }),
    ...(load === undefined ? {} : { load }),
  };
  const figure = { value: 300, uncertainty: 5 };
  const { power: _, ...voltageAlone } = assay.result;
  const result = power
    ? {
        ...voltageAlone,
        power: {
          ...{ activeW: figure, apparentVA: figure, nonactiveVar: figure },
          ...{ powerFactor: figure, displacementPowerFactor: figure },
        },
      }
    : voltageAlone;
  const measured = { ...assay, result: { ...result, ...changes } } as typeof assay;
  return {
    ...{ id, name: `${id}.csv`, file: new Blob([]), told: nothingTold, channel: 0 },
    state: {
      at: 'ready',
      measured: {
        ...{ sha256: '', channels: [], startS: 0, endS: 1, intervalS: 1 },
        assays: [
          {
            ...{ result: measured.result, shown: measured.result, method: [], zeroS: 0, changes: null },
            wave: captureEvidence(measured, 'wave', options, '0.0.0'),
          },
        ],
      },
    },
  };
}

describe('captures without a unit’s name', () => {
  const of230 = { nominal: { voltageV: 230, frequencyHz: 50, inferred: true } };
  const stepped = { waveform: { kind: 'stepped', reasons: [], levels: 9, atTheEdge: false } } as const;
  const loads = (changes: ToldOfIt['changes'] = {}, first = 1): readonly Entry[] =>
    ['no load', '300 W'].map((load, i) => entry(first + i, load, { changes }));
  const idsOf = (entries: readonly Entry[]) =>
    sweepUnits(entries, 1, new Map()).units.map(({ captures }) => captures.map(({ id }) => id));

  test('are never one sweep across different nominals or kinds of wave', () => {
    expect(idsOf([...loads(), ...loads(of230, 3)])).toEqual([
      [1, 2],
      [3, 4],
    ]);
    expect(idsOf([...loads(), ...loads(stepped, 3)])).toEqual([
      [1, 2],
      [3, 4],
    ]);
    expect(idsOf([entry(1, 'no load'), entry(2, '300 W', { changes: of230 })])).toEqual([]);
    const labels = sweepUnits([...loads(), ...loads(of230, 3)], 1, new Map()).units.map(({ label }) => label);
    expect(labels[1]).toBe('A unit without a name (230 V 50 Hz, sine)');
    expect(new Set(labels).size).toBe(2);
  });

  test('stay one where a voltage has fallen too low for the nominal, or a sine is distorted', () => {
    const low = { nominal: null };
    const distorted = {
      waveform: { kind: 'distorted sine', reasons: [], levels: 0, atTheEdge: false },
    } as const;
    expect(idsOf([...loads(), entry(3, '600 W', { changes: { ...low, ...distorted } })])).toEqual([
      [1, 2, 3],
    ]);
  });
});

describe('captures at several loads', () => {
  test('are a unit from two on; one whose load nobody tells is left out, by name', () => {
    const found = sweepUnits(
      [entry(1, 'no load'), entry(2, '300 W heater'), entry(3, 'kettle')],
      1,
      new Map(),
    );
    expect(found).toEqual({
      units: [
        {
          ...{ label: 'The unit under test', claims: [] },
          captures: [
            { id: 1, told: { loadW: 0 } },
            { id: 2, told: { loadW: 300 } },
          ],
          ...{ steps: [], transfers: [] },
        },
      ],
      leftOut: ['3.csv'],
    });
    expect(sweepUnits([entry(1, 'no load'), entry(2, undefined)], 1, new Map()).units).toEqual([]);
  });

  test('stand under the label of their unit', () => {
    const all = [
      entry(1, '0 W', { label: 'A' }),
      entry(2, '0 W', { label: 'B' }),
      entry(3, '300 W', { label: 'A' }),
      entry(4, '300 W', { label: 'B' }),
      entry(5, '300 W', { label: 'C' }),
    ];
    const { units } = sweepUnits(all, 1, new Map());
    expect(units.map(({ label, captures }) => [label, captures.map(({ id }) => id)])).toEqual([
      ['A', [1, 3]],
      ['B', [2, 4]],
    ]);
  });

  test('take a power that was measured where none is told, and the told one else', () => {
    const { units } = sweepUnits(
      [entry(1, undefined, { power: true }), entry(2, '600 W', { power: true })],
      1,
      new Map(),
    );
    expect(units[0]?.captures.map(({ told }) => told.loadW)).toEqual([null, 600]);
  });

  test('are held against the claims of the one that is looked at, or the first that has some; and the rating', () => {
    const all = [
      entry(1, '0 W'),
      entry(2, '300 W', { claims: ['THD < 3 %'] }),
      entry(3, '600 W', { claims: ['120 V ±5 %'] }),
    ];
    const claims = (looked: number, ratings = new Map<string, string>()): readonly string[] | undefined =>
      sweepUnits(all, looked, ratings).units[0]?.claims;
    expect(claims(3)).toEqual(['120 V ±5 %']);
    expect(claims(1)).toEqual(['THD < 3 %']);
    const rating = new Map([['The unit under test', 'power 600 W']]);
    expect(claims(2, rating)).toEqual(['THD < 3 %', 'power 600 W']);
  });

  test('bring the load steps and transfers of a unit that is named with them, unless a step is told to be at one load', () => {
    const step = { steps: [{}] } as unknown as ToldOfIt['changes'] & object;
    const transfer = { events: [{ kind: 'transfer' }] } as unknown as ToldOfIt['changes'] & object;
    const all = (label: { readonly label?: string }): readonly Entry[] => [
      entry(1, '0 W', label),
      entry(2, '300 W', { ...label, changes: step }),
      entry(3, 'no load, then 600 W', { ...label, changes: step }),
      entry(4, '300 W', { ...label, changes: transfer }),
    ];
    const named = sweepUnits(all({ label: 'A' }), 1, new Map());
    expect(named.units[0]).toMatchObject({ captures: [{ id: 1 }, { id: 2 }], steps: [3], transfers: [4] });
    expect(named.leftOut).toEqual([]);
    // Of no unit by name, a change may be anybody's.
    const unnamed = sweepUnits(all({}), 1, new Map());
    expect(unnamed.units[0]).toMatchObject({
      captures: [{ id: 1 }, { id: 2 }, { id: 4 }],
      steps: [],
      transfers: [],
    });
    expect(unnamed.leftOut).toEqual(['3.csv']);
  });
});
