import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conformanceProbability } from '../../src/judge/decide.ts';

const figure = (value: number, uncertainty: number) => ({ value, uncertainty });

describe('conformanceProbability', () => {
  it('gives the Zener diode of JCGM 106:2012 its 0.92', () => {
    // y = −5.47 V, u = 0.05 V, at most −5.40 V (value from memory); Φ(1.40) = 0.919243 by scipy.
    const found = conformanceProbability(figure(-5.47, 0.1), { max: -5.4 });
    expect(found.toFixed(2)).toBe('0.92');
    expect(Math.abs(found - 0.91924334)).toBeLessThan(5e-9); // digits printed
  });

  it.each([
    // Guard band w in U, chance of a false acceptance at the acceptance limit: ILAC-G8:09/2019, table of
    // guard bands (from memory), recomputed with scipy 1.17.1 as norm.sf(2 w / U).
    [3, 9.865876e-10],
    [1.5, 1.349898e-3],
    [1, 2.275013e-2],
    [0.83, 4.845723e-2],
    [0, 0.5],
  ])(
    'at a guard band of %s U leaves the false-acceptance chance of the guard band table',
    (band, expected) => {
      const uncertainty = 0.4;
      const found = 1 - conformanceProbability(figure(5 - band * uncertainty, uncertainty), { max: 5 });
      // Relative 1e-6: digits printed; absolute 1e-15: 1 − p loses that much.
      expect(Math.abs(found - expected)).toBeLessThan(expected * 1e-6 + 1e-15);
    },
  );

  it('adds up both sides of a two-sided limit', () => {
    // Φ(2) − Φ(−2) = 0.954500 (GUM, coverage of k = 2), and half of Φ(4) − Φ(−4) on an edge.
    expect(
      Math.abs(conformanceProbability(figure(120, 6), { min: 114, max: 126 }) - 0.9544997361),
    ).toBeLessThan(5e-11);
    expect(
      Math.abs(conformanceProbability(figure(114, 6), { min: 114, max: 126 }) - 0.4999683288),
    ).toBeLessThan(5e-11);
  });

  it('is certain without uncertainty, and takes the limit itself as inside', () => {
    expect(conformanceProbability(figure(5, 0), { max: 5 })).toBe(1);
    expect(conformanceProbability(figure(5.000001, 0), { max: 5 })).toBe(0);
    expect(conformanceProbability(figure(4, 0), { min: 4, max: 5 })).toBe(1);
  });

  it('never rises as a value climbs towards a maximum and past it', () => {
    const volts = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(volts, volts, fc.double({ min: 0, max: 3, noNaN: true }), (a, b, uncertainty) => {
        const low = conformanceProbability(figure(Math.min(a, b), uncertainty), { max: 10 });
        const high = conformanceProbability(figure(Math.max(a, b), uncertainty), { max: 10 });
        expect(high).toBeLessThanOrEqual(low);
        expect(high).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(1);
      }),
    );
  });
});
