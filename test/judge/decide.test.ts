import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, marginToLimit } from '../../src/judge/decide.ts';

const limit = { max: 5 };

describe('decide', () => {
  it.each([
    // The four outcomes of ILAC-G8:09/2019 with w = U at THD ≤ 5.0 %, U = 0.4 %: p = Φ((5 − y) / 0.2),
    // computed with scipy 1.17.1.
    [4.2, 'pass', 0.99996833],
    [4.7, 'conditional pass', 0.9331928],
    [5.2, 'conditional fail', 0.15865525],
    [5.6, 'fail', 0.0013499],
  ])('of %s %% with U = 0.4 %% against 5 %% says %s', (value, outcome, probability) => {
    const found = decide({ value, uncertainty: 0.4 }, limit, 'guarded');
    expect(found.outcome).toBe(outcome);
    expect(Math.abs((found.probability ?? 0) - probability)).toBeLessThan(5e-8); // digits printed
  });

  it('knows no condition under simple acceptance', () => {
    expect(decide({ value: 4.9, uncertainty: 0.4 }, limit, 'simple').outcome).toBe('pass');
    expect(decide({ value: 5.1, uncertainty: 0.4 }, limit, 'simple').outcome).toBe('fail');
  });

  it('knows no condition without uncertainty, even on the limit', () => {
    const onLimit = decide({ value: 5, uncertainty: 0 }, limit, 'guarded');
    expect(onLimit).toEqual({ outcome: 'pass', probability: 1, margin: 0, side: 'inside' });
    expect(decide({ value: 5.5, uncertainty: 0 }, limit, 'guarded').outcome).toBe('fail');
  });

  it('makes a condition of a margin that is just the guard band', () => {
    expect(decide({ value: 4.5, uncertainty: 0.5 }, limit, 'guarded').outcome).toBe('conditional pass');
    expect(decide({ value: 5.5, uncertainty: 0.5 }, limit, 'guarded').outcome).toBe('conditional fail');
  });

  it('judges nothing that could not be measured', () => {
    const found = decide({ value: null, reason: 'no period' }, limit, 'guarded');
    expect(found).toEqual({ outcome: 'not judged', probability: null, margin: null, side: null });
  });

  it('never passes outright what is less certain than the tolerance is wide', () => {
    const found = decide({ value: 120, uncertainty: 8 }, { min: 114, max: 126 }, 'guarded');
    expect(found.outcome).toBe('conditional pass');
  });

  it('refuses a limit without a side and one that holds nothing', () => {
    expect(() => decide({ value: 1, uncertainty: 0 }, {}, 'guarded')).toThrow(RangeError);
    expect(() => marginToLimit(1, { min: 2, max: 1 })).toThrow(RangeError);
  });

  it('keeps outcome, side, margin and probability of one mind', () => {
    const number = fc.double({ min: -50, max: 50, noNaN: true });
    const uncertainty = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 20, noNaN: true }));
    fc.assert(
      fc.property(number, uncertainty, number, (value, u, max) => {
        const found = decide({ value, uncertainty: u }, { max }, 'guarded');
        const simple = decide({ value, uncertainty: u }, { max }, 'simple');
        expect(found.side).toBe(value <= max ? 'inside' : 'outside');
        expect(found.margin).toBe(max - value);
        expect(found.outcome.endsWith('pass')).toBe(found.side === 'inside');
        expect(simple.outcome).toBe(found.side === 'inside' ? 'pass' : 'fail');
        // One-sided: inside is as likely as not or better. 1e-15: Φ(0) itself may round either way.
        if (found.side === 'inside') expect(found.probability).toBeGreaterThanOrEqual(0.5 - 1e-15);
        else expect(found.probability).toBeLessThanOrEqual(0.5 + 1e-15);
        // Φ(2) = 0.977250: a plain outcome is at least that certain.
        if (found.outcome === 'pass') expect(found.probability).toBeGreaterThanOrEqual(0.97725);
        if (found.outcome === 'fail') expect(found.probability).toBeLessThanOrEqual(0.02275013195);
      }),
    );
  });
});
