import { describe, expect, test } from 'vitest';
import type { Figure } from '../../../src/base/figure.ts';
import type { BenchStep } from '../../../src/bench/benchDocument.ts';
import { judgeUnitClaim } from '../../../src/bench/claims/judgeUnitClaim.ts';
import { parseUnitClaim } from '../../../src/bench/claims/parseUnitClaim.ts';
import type { UnitEvidence } from '../../../src/bench/claims/unitEvidence.ts';
import { energyRun } from '../../../src/bench/energy/energyRun.ts';
import type { ClaimResult } from '../../../src/verdict/measureDocument.ts';
import { point } from '../benchPoints.ts';

const judge = (text: string, evidence: Partial<UnitEvidence>) =>
  judgeUnitClaim(parseUnitClaim(text), {
    ...{ points: [], steps: [], energy: [], judged: [], rule: 'guarded' },
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

describe('power', () => {
  test('the lowest load that reaches it decides: what lies above is no part of the claim', () => {
    const points = [point(0, 120), point(580, 117), point(900, 90)];
    expect(judge('power 600 W', { points })).toMatchObject({
      ...{ outcome: 'pass', value: 580, limit: { min: 600 }, worstFile: '580w.csv' },
    });
  });

  test('fails where the voltage has left its range by more than its uncertainty', () => {
    expect(judge('power 600 W', { points: [point(600, 100)] }).outcome).toBe('fail');
  });

  test('can’t be judged below 95 % of it, nor without a range', () => {
    expect(judge('power 600 W', { points: [point(560, 118)] })).toMatchObject({
      outcome: 'not judged',
      reason: 'no capture reaches 600 W: the highest load is 560 W',
    });
    expect(judge('power 600 W', { points: [point(600, 118)], range: null }).outcome).toBe('not judged');
  });
});

describe('surge', () => {
  const figure = (value: number): Figure => ({ value, uncertainty: 1 });
  const step = (toW: number, afterV: number): BenchStep => ({
    ...{ file: 'step.csv', fromW: 0, toW, resistive: true, direction: 'on' },
    ...{ atS: figure(0), beforeV: figure(120), afterV: figure(afterV), extremeV: figure(afterV) },
    ...{ deviationPercent: figure(-5), afterPercent: figure(-5), recoveryS: figure(0.04) },
  });

  test('at best probably holds, for a capture ends before a surge is over', () => {
    expect(judge('surge 1200 W', { steps: [step(1200, 118)] })).toMatchObject({
      outcome: 'conditional pass',
      worstFile: 'step.csv',
    });
  });

  test('fails where the voltage collapses, and can’t be judged where nothing reaches it', () => {
    expect(judge('surge 1200 W', { steps: [step(1200, 60)] }).outcome).toBe('fail');
    expect(judge('surge 1200 W', { steps: [step(600, 118)], points: [point(600, 118)] }).outcome).toBe(
      'not judged',
    );
  });
});

describe('capacity', () => {
  const run = (dcWh: number | null) =>
    energyRun({
      ratedWh: 240,
      dcWh: dcWh === null ? null : { value: dcWh, uncertainty: 0 },
      acWh: { value: 190, uncertainty: 0 },
    });

  test('85 % of the rating at the DC side is decent, whatever the outlet gave', () => {
    expect(judge('capacity 240 Wh', { energy: [run(209)] })).toMatchObject({ outcome: 'pass', value: 209 });
    expect(judge('capacity 240 Wh', { energy: [run(209), run(200)] })).toMatchObject({
      outcome: 'fail',
      value: 200,
    });
    expect(judge('capacity 240 Wh', { energy: [run(null)] }).outcome).toBe('not judged');
  });
});
