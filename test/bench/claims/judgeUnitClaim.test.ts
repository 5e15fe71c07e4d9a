import { describe, expect, test } from 'vitest';
import { judgeUnitClaim } from '../../../src/bench/claims/judgeUnitClaim.ts';
import { parseUnitClaim } from '../../../src/bench/claims/parseUnitClaim.ts';
import type { UnitEvidence } from '../../../src/bench/claims/unitClaim.ts';
import { energyRun } from '../../../src/bench/energyRun.ts';
import type { ShownLoad } from '../../../src/bench/shownLoad.ts';
import type { ClaimResult } from '../../../src/judge/claims/claim.ts';

const judge = (text: string, evidence: Partial<UnitEvidence>) =>
  judgeUnitClaim(parseUnitClaim(text), {
    ...{ loads: [], transfers: [], energy: [], judged: [], rule: 'guarded' },
    range: { limit: { min: 108, max: 132 }, from: 'nominal ±10 %' },
    ...evidence,
  });

describe('a claim that captures judge', () => {
  const result = (outcome: ClaimResult['outcome'], probability: number | null): ClaimResult => ({
    ...{ text: 'THD < 3 %', quantity: 'thdPercent', value: 2, limit: { max: 3 } },
    ...{ outcome, probability },
  });
  const capture = (loadW: number, claim: ClaimResult) => ({ file: `${loadW}w.csv`, loadW, claims: [claim] });

  test('stands as its worst capture does, which is named', () => {
    const judged = [
      capture(0, result('pass', 1)),
      capture(300, result('fail', 0.01)),
      capture(600, result('conditional fail', 0.3)),
    ];
    expect(judge('THD < 3 %', { judged })).toMatchObject({
      outcome: 'fail',
      worstFile: '300w.csv',
      worstLoadW: 300,
    });
  });

  test('among those of one outcome the least probable decides, then the highest load', () => {
    const judged = [
      capture(0, result('pass', 0.999)),
      capture(300, result('pass', 0.98)),
      capture(600, result('pass', 0.98)),
    ];
    expect(judge('THD < 3 %', { judged }).worstLoadW).toBe(600);
  });

  test('can’t be judged where no capture tells', () => {
    expect(judge('transfer < 20 ms', {})).toMatchObject({
      outcome: 'not judged',
      reason: 'no capture of a transfer',
      worstFile: null,
    });
  });
});

/** What a capture shows of a load: held for 0.2 s at 118 V ± 1 V unless said. */
const load = (loadW: number | null, more: Partial<ShownLoad> = {}): ShownLoad => ({
  ...{ file: `${loadW}w.csv`, sha256: '0'.repeat(64), loadFrom: loadW === null ? 'unknown' : 'told' },
  loadW: loadW === null ? { value: null, reason: 'not told' } : { value: loadW, uncertainty: 0 },
  ...{ heldS: { value: 0.2, uncertainty: 0 }, heldAtLeast: true, loss: null, isFigured: true },
  rmsV: { value: 118, uncertainty: 1 },
  ...more,
});
/** The same, with the output lost so many seconds after it came on. */
const lost = (
  loadW: number | null,
  heldS = 0.14,
  kind: NonNullable<ShownLoad['loss']>['kind'] = 'cut-off',
): ShownLoad =>
  load(loadW, {
    heldS: { value: heldS, uncertainty: 0.002 },
    heldAtLeast: false,
    loss: { kind, atS: { value: 0.14, uncertainty: 0.002 }, words: 'output lost' },
  });
const volts = (rmsV: number): Partial<ShownLoad> => ({ rmsV: { value: rmsV, uncertainty: 1 } });

describe('power', () => {
  test('probably holds at best: a capture lasts a moment, and the reason says which', () => {
    expect(judge('power 600 W', { loads: [load(0), load(600)] })).toMatchObject({
      ...{ outcome: 'conditional pass', value: 600, limit: { min: 600 }, worstFile: '600w.csv' },
      reason: '0.2 s seen; 118.0 V at 600 W',
    });
  });

  test('fails where the output is lost at that load, though another capture of it holds', () => {
    expect(judge('power 1500 W', { loads: [load(0), load(1500), lost(1500)] })).toMatchObject({
      ...{ outcome: 'fail', worstLoadW: 1500, worstFile: '1500w.csv' },
      reason: 'output lost 0.14 s after 1500 W came on',
    });
  });

  test.each([
    ['below it', 900],
    ['within the doubt of a load above it', 1540],
  ])('fails where the output is lost %s', (_, watts) => {
    expect(judge('power 1500 W', { loads: [load(1500), lost(watts)] }).outcome).toBe('fail');
  });

  test.each(['outage', 'brown-out', 'hiccup', 'failed start'] as const)('fails at a %s', (kind) => {
    expect(judge('power 1500 W', { loads: [lost(1500, 0.14, kind)] }).outcome).toBe('fail');
  });

  test('what lies above is overload and held against it by nothing', () => {
    const loads = [load(580), lost(2000), load(900, volts(90))];
    expect(judge('power 600 W', { loads })).toMatchObject({ outcome: 'conditional pass', value: 580 });
    // Alone it can speak for the rating, never against it.
    expect(judge('power 600 W', { loads: [load(900)] }).outcome).toBe('conditional pass');
    expect(judge('power 600 W', { loads: [load(900, volts(90))] }).outcome).toBe('not judged');
    expect(judge('power 600 W', { loads: [lost(900)] }).outcome).toBe('not judged');
  });

  test('can’t be judged where a loss has no load, or may be a transfer', () => {
    expect(judge('power 600 W', { loads: [load(600), lost(null)] })).toMatchObject({
      ...{ outcome: 'not judged', reason: 'output lost in nullw.csv, at a load that is not known' },
    });
    expect(judge('power 600 W', { loads: [load(600), lost(300, 0.1, 'transfer')] }).outcome).toBe(
      'not judged',
    );
  });

  test('fails where the voltage has left its range by more than its uncertainty', () => {
    expect(judge('power 600 W', { loads: [load(600, volts(100))] }).outcome).toBe('fail');
    expect(judge('power 600 W', { loads: [load(600), load(600, volts(100))] }).outcome).toBe('fail');
  });

  test('can’t be judged below 95 % of it, nor without a range', () => {
    expect(judge('power 600 W', { loads: [load(560)] })).toMatchObject({
      outcome: 'not judged',
      reason: 'no capture reaches 600 W: the highest load is 560 W',
    });
    expect(judge('power 600 W', { loads: [load(600)], range: null }).outcome).toBe('not judged');
  });
});

describe('surge', () => {
  test('at best probably holds where no time is claimed, or not all of it was seen', () => {
    expect(judge('surge 1200 W', { loads: [load(1200)] })).toMatchObject({
      ...{ outcome: 'conditional pass', worstFile: '1200w.csv', reason: '0.2 s seen; 118.0 V at 1200 W' },
    });
    expect(judge('surge 1200 W for 5 s', { loads: [load(1200)] })).toMatchObject({
      ...{ outcome: 'conditional pass', reason: '0.2 s of 5 s seen; 118.0 V at 1200 W' },
    });
    const whole = load(1200, { heldS: { value: 6, uncertainty: 0 } });
    expect(judge('surge 1200 W for 5 s', { loads: [whole] }).outcome).toBe('pass');
  });

  test('without a time a loss can’t be judged: how long it was held is said', () => {
    expect(judge('surge 2000 W', { loads: [load(2000), lost(2000)] })).toMatchObject({
      outcome: 'not judged',
      reason: 'held 0.14 s at 2000 W; for how long it is meant is not claimed',
    });
  });

  test('fails where it is lost before its time, at that load or a lower one', () => {
    expect(judge('surge 2000 W for 5 s', { loads: [lost(2000)] })).toMatchObject({
      ...{ outcome: 'fail', reason: 'output lost 0.14 s after 2000 W came on' },
    });
    expect(judge('surge 2000 W for 5 s', { loads: [load(2000), lost(1500)] }).outcome).toBe('fail');
  });

  test('holds where it was lost after its time only; a loss far above it says nothing', () => {
    expect(judge('surge 2000 W for 100 ms', { loads: [lost(2000)] }).outcome).toBe('pass');
    expect(judge('surge 2000 W for 0.141 s', { loads: [lost(2000)] }).outcome).toBe('conditional fail');
    expect(judge('surge 2000 W for 5 s', { loads: [lost(3000)] }).outcome).toBe('not judged');
  });

  test('can’t be judged where the load was on before the record began', () => {
    const since = { ...lost(2000), heldAtLeast: true };
    expect(judge('surge 2000 W for 5 s', { loads: [since] })).toMatchObject({
      ...{ outcome: 'not judged', reason: 'held at least 0.14 s at 2000 W, of 5 s claimed' },
    });
    expect(judge('surge 2000 W for 100 ms', { loads: [since] }).outcome).toBe('pass');
  });

  test('fails where the voltage collapses, and can’t be judged where nothing reaches it', () => {
    expect(judge('surge 1200 W', { loads: [load(1200, volts(60))] }).outcome).toBe('fail');
    expect(judge('surge 1200 W', { loads: [load(600)] }).outcome).toBe('not judged');
  });
});

describe('efficiency', () => {
  const run = (dcWh: number, acWh: number) =>
    energyRun({
      ratedWh: 700,
      dcWh: { value: dcWh, uncertainty: 6 },
      acWh: { value: acWh, uncertainty: 5 },
    });

  test('the discharge that does worst decides', () => {
    // 540 / 600 = 90 %, 470 / 600 = 78.3 %, each good to 1.3 points.
    expect(judge('efficiency > 85%', { energy: [run(600, 540)] }).outcome).toBe('pass');
    expect(judge('efficiency > 85%', { energy: [run(600, 540), run(600, 470)] })).toMatchObject({
      ...{ outcome: 'fail', value: expect.closeTo((100 * 470) / 600, 9) },
    });
    expect(judge('efficiency > 85%', {}).outcome).toBe('not judged');
  });
});

describe('capacity', () => {
  const run = (dcWh: number | null) =>
    energyRun({
      ratedWh: 700,
      dcWh: dcWh === null ? null : { value: dcWh, uncertainty: 0 },
      acWh: { value: 530, uncertainty: 0 },
    });

  test('85 % of the rating at the DC side is decent, whatever the outlet gave', () => {
    expect(judge('capacity 700 Wh', { energy: [run(610)] })).toMatchObject({ outcome: 'pass', value: 610 });
    expect(judge('capacity 700 Wh', { energy: [run(610), run(580)] })).toMatchObject({
      outcome: 'fail',
      value: 580,
    });
    expect(judge('capacity 700 Wh', { energy: [run(null)] }).outcome).toBe('not judged');
  });
});
